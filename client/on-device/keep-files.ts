import sileroUrl from '@ricky0123/vad-web/dist/silero_vad_v5.onnx?url';
import simdUrl from 'onnxruntime-web/dist/ort-wasm-simd.wasm?url';
import * as z from 'zod/mini';
import type { FileList, Request } from '../offline/asked.ts';

const Listed = z.array(
  z.object({ url: z.string().check(z.startsWith('/speech-model/')), revision: z.string() }),
);

/** All that this phone needs to hear by itself. Rejects when the server has no such list. */
async function hearingFiles(): Promise<FileList> {
  const model = Listed.parse(await (await fetch('/speech-model/files.json')).json());
  // Their names change with their contents.
  return [...model, ...[sileroUrl, simdUrl].map((url) => ({ url, revision: url }))];
}

/** Asks for these files once, so that they are here in a dead spot. Not over a line that is paid by the megabyte. */
export async function keepHearing(): Promise<void> {
  const { connection } = navigator as { connection?: { saveData?: boolean; type?: string } };
  if (connection?.saveData || connection?.type === 'cellular') return;
  const worker = (await navigator.serviceWorker?.ready)?.active;
  const files = worker && (await hearingFiles().catch(() => undefined));
  if (files) worker.postMessage({ do: 'keep', files } satisfies Request);
}
