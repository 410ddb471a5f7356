/** On the ladder, until that phone is taught: nothing is told before. */
export const NOT_TAUGHT = {
  show: 'The other phone is not taught yet',
  why: 'Teach the phone at the panel none, some and plenty. Then it tells what the light does.',
};
