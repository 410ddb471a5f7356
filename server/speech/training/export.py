"""Writes the trained network as a wav2vec2-style CTC model with 8-bit weights.

    python3 export.py WEIGHTS MODEL

MODEL receives config.json, preprocessor_config.json, tokenizer.json, tokenizer_config.json and
onnx/model_quantized.onnx (ONNX opset 14, IR 8, so that the runtime of @xenova/transformers 2.17 reads it).
"""

import json
import sys
import tempfile
from pathlib import Path

import onnx
import torch
from onnxruntime.quantization import QuantType, quantize_dynamic

from model import ALPHABET, Deployed, Recogniser
from second import DeployedSecond, Second, Words


def load(weights: Path) -> Recogniser | Second:
    """The hearer whose weights these are."""
    held = torch.load(weights, map_location="cpu")
    words = held.pop("words", None)
    model = Second(Words(words)) if words else Recogniser()
    model.load_state_dict({k: v.float() for k, v in held.items()})
    return model.eval()


def graph(model: Recogniser | Second, file: Path) -> None:
    deployed = DeployedSecond(model) if isinstance(model, Second) else Deployed(model)
    torch.onnx.export(deployed.eval(), torch.randn(1, 32000), str(file), opset_version=14, dynamo=False,
                      input_names=["input_values"], output_names=["logits"],
                      dynamic_axes={"input_values": {0: "batch", 1: "samples"}, "logits": {0: "batch", 1: "frames"}})


def quantize(full: Path, small: Path) -> None:
    quantize_dynamic(full, small, weight_type=QuantType.QInt8, per_channel=True, reduce_range=False, op_types_to_quantize=["MatMul"])
    net = onnx.load(small)
    net.ir_version = 8
    onnx.save(net, small)


def describe_network(folder: Path, tokens: int, samples_a_frame: int) -> None:
    tables = {
        "config.json": {"model_type": "wav2vec2", "architectures": ["Wav2Vec2ForCTC"], "vocab_size": tokens, "pad_token_id": 0,
                        "bos_token_id": 1, "eos_token_id": 2, "inputs_to_logits_ratio": samples_a_frame, "sampling_rate": 16000},
        "preprocessor_config.json": {"feature_extractor_type": "Wav2Vec2FeatureExtractor", "feature_size": 1, "sampling_rate": 16000,
                                     "do_normalize": True, "padding_value": 0.0, "padding_side": "right", "return_attention_mask": False},
    }
    write(folder, tables)


def write(folder: Path, tables: dict) -> None:
    for name, table in tables.items():
        (folder / name).write_text(json.dumps(table, indent=1, ensure_ascii=False) + "\n")


def describe_letters(folder: Path) -> None:
    vocabulary = {token: i for i, token in enumerate(ALPHABET)}
    special = [{"id": i, "content": ALPHABET[i], "single_word": False, "lstrip": True, "rstrip": True, "normalized": False, "special": True} for i in range(4)]
    tables = {
        "tokenizer.json": {"version": "1.0", "truncation": None, "padding": None, "added_tokens": special, "normalizer": None,
                           "pre_tokenizer": {"type": "Split", "pattern": {"Regex": ""}, "behavior": "Isolated", "invert": False}, "post_processor": None,
                           "decoder": {"type": "CTC", "pad_token": "<pad>", "word_delimiter_token": "|", "cleanup": True},
                           "model": {"vocab": vocabulary, "unk_token": "<unk>"}},
        "tokenizer_config.json": {"tokenizer_class": "Wav2Vec2CTCTokenizer", "pad_token": "<pad>", "bos_token": "<s>", "eos_token": "</s>",
                                  "unk_token": "<unk>", "word_delimiter_token": "|", "do_lower_case": False, "model_max_length": 1000000},
    }
    write(folder, tables)


def main(weights: Path, folder: Path) -> None:
    (folder / "onnx").mkdir(parents=True, exist_ok=True)
    model = load(weights)
    with tempfile.TemporaryDirectory() as scratch:
        graph(model, Path(scratch) / "full.onnx")
        quantize(Path(scratch) / "full.onnx", folder / "onnx" / "model_quantized.onnx")
    if isinstance(model, Second):
        describe_network(folder, len(model.words.words) + 2, 640)
        write(folder, {"words.json": model.words.words})
    else:
        describe_network(folder, len(ALPHABET), 320)
        describe_letters(folder)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
