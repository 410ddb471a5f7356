/** Talk on a site that is not a sentence of ours, not used in training. Some of it has numbers and our words. */
const WHO = [
  'he',
  'she',
  'the foreman',
  'my brother',
  'the electrician',
  'somebody',
  'the driver',
  'they all',
];
const DID = ['went', 'came', 'drove', 'walked', 'ran', 'climbed', 'looked', 'called'];
const WHERE = [
  'to the canteen',
  'back at eight',
  'over the fence',
  'for three hours',
  'into gate seven',
  'with two others',
  'home early',
  'behind the racks',
];
const ASK = [
  'can you bring',
  'who has got',
  'where did we leave',
  'did you order',
  'mind',
  'give her',
  'look at',
];
const WHAT = [
  'the tape measure',
  'my lunch box',
  'forty metres of cable',
  'the blue van',
  'a cup of coffee',
  'those four boxes',
  'the other harness',
  'the keys for the yard',
];
const REMARK = [
  'it is cold in here today',
  'that makes twelve pallets since this morning',
  'the lift is out of order again',
  'i never liked working on fridays',
  'there are nine of us on this floor',
  'you should see the new office',
  'my train goes at half past five',
  'we have done this job twice already',
];

const PAUSE = ['', '', 'you know', 'i think', 'honestly'];

/** One such sentence, drawn with `rng` (0 up to but not including 1). */
export function chatter(rng: () => number): string {
  const pick = (from: readonly string[]): string => from[Math.floor(rng() * from.length)] as string;
  const kind = rng();
  const text =
    kind < 0.4 ? [pick(WHO), pick(DID), pick(WHERE)] : kind < 0.8 ? [pick(ASK), pick(WHAT)] : [pick(REMARK)];
  return [pick(PAUSE), ...text].filter(Boolean).join(' ');
}
