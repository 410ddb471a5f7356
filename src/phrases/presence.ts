/** "panel and emitter", "panel", or nobody: the phones that are linked to a pair now. */
export function whoIsOn({
  online: { panel, emitter },
}: {
  online: { panel: boolean; emitter: boolean };
}): string {
  if (panel && emitter) return 'panel and emitter';
  if (panel || emitter) return panel ? 'panel' : 'emitter';
  return 'nobody';
}
