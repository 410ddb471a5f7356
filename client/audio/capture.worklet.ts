/** Runs on the audio thread: gathers the microphone's blocks and hands them over, nothing else. */

// The audio thread's globals are in no standard TypeScript library.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: Float32Array[][]): boolean;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Samples a message: about 43 ms at 48 kHz. */
const BLOCK = 2048;

class Capture extends AudioWorkletProcessor {
  #block = new Float32Array(BLOCK);
  #filled = 0;

  process(inputs: Float32Array[][]): boolean {
    const channel = inputs[0]?.[0];
    if (!channel) return true;
    for (const sample of channel) {
      this.#block[this.#filled++] = sample;
      if (this.#filled === BLOCK) {
        this.port.postMessage(this.#block, [this.#block.buffer]);
        this.#block = new Float32Array(BLOCK);
        this.#filled = 0;
      }
    }
    return true;
  }
}

registerProcessor('capture', Capture);
