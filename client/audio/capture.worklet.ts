/** Runs on the audio thread. It only collects the microphone's blocks and passes them on. */

// No standard TypeScript library has the globals of the audio thread.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: Float32Array[][]): boolean;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Samples in a message: about 43 ms at 48 kHz. */
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
