"""The weights of a shipped model, as train.py can go on from them.

    python3 weights_of.py MODEL WEIGHTS [TEXTS]

MODEL is a folder that export.py wrote. TEXTS, of texts.ts: a second hearer learns the words that the grammar has gained since; each
begins as what "any other word" is. The 8-bit matrices become floats again, as the runtime reads them. The output at half
depth, which is only used in training, was not shipped: it begins as a copy of the last one.
"""

import json
import sys
from pathlib import Path

import numpy as np
import onnx
import torch
from onnx import numpy_helper

from model import BLANK
from second import OTHER, Words


def module(node: str) -> str:
    """`/blocks.0/first/first.1/MatMul_quant` is `blocks.0.first.1`."""
    parts = node.strip("/").split("/")[:-1]
    return ".".join(p for p, following in zip(parts, [*parts[1:], ""]) if not following.startswith(f"{p}."))


def weights(folder: Path) -> dict:
    graph = onnx.load(folder / "onnx" / "model_quantized.onnx").graph
    held = {t.name: numpy_helper.to_array(t) for t in graph.initializer}
    found = {n.split(".", 1)[1]: torch.tensor(v).float() for n, v in held.items() if n.startswith(("recogniser.", "second."))}
    for node in graph.node:
        if node.op_type == "MatMulInteger" and node.input[1] in held:
            name = node.input[1].removesuffix("_quantized")
            steps = held[node.input[1]].astype(np.float32) - held[f"{name}_zero_point"]
            found[f"{module(node.name)}.weight"] = torch.tensor((steps * held[f"{name}_scale"]).T.copy())
    found |= {f"middle.{part}": found[f"exit.{part}"].clone() for part in ("weight", "bias")}
    words = folder / "words.json"
    return found | ({"words": json.loads(words.read_text())} if words.exists() else {})


def grown(held: dict, texts: Path) -> dict:
    """The same with the words of the grammar as it is now."""
    words = Words.of_grammar(texts).words
    before = {word: i for i, word in enumerate(held["words"], 2)}
    rows = torch.tensor([BLANK, OTHER] + [before.get(word, OTHER) for word in words])
    outputs = {f"{name}.{part}": held[f"{name}.{part}"][rows].clone() for name in ("exit", "middle") for part in ("weight", "bias")}
    return held | outputs | {"words": words}


if __name__ == "__main__":
    held = weights(Path(sys.argv[1]))
    torch.save(grown(held, Path(sys.argv[3])) if len(sys.argv) > 3 else held, sys.argv[2])
