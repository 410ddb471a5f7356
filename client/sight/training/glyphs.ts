/** Which of the seven segments each character lights: a on top, then clockwise b to f, g in the middle. */
export const SEGMENTS: Readonly<Record<string, string>> = {
  '0': 'abcdef',
  '1': 'bc',
  '2': 'abdeg',
  '3': 'abcdg',
  '4': 'bcfg',
  '5': 'acdfg',
  '6': 'acdefg',
  '7': 'abc',
  '8': 'abcdefg',
  '9': 'abcdfg',
  '-': 'g',
  ' ': '',
  E: 'adefg',
  r: 'eg',
  o: 'cdeg',
  L: 'def',
  H: 'bcefg',
  P: 'abefg',
  F: 'aefg',
  C: 'adef',
  A: 'abcefg',
  U: 'bcdef',
  d: 'bcdeg',
  n: 'ceg',
  t: 'defg',
};

/** How some displays draw a six, a nine and a seven. */
export const OTHER_SEGMENTS: Readonly<Record<string, string>> = { '6': 'cdefg', '9': 'abcfg', '7': 'abcf' };

const rows = (...lines: string[]): readonly string[] => lines;

/** Five columns by seven rows, drawn for this project. */
export const DOTS: Readonly<Record<string, readonly string[]>> = {
  '0': rows(' ### ', '#   #', '#   #', '#   #', '#   #', '#   #', ' ### '),
  '1': rows('  #  ', ' ##  ', '  #  ', '  #  ', '  #  ', '  #  ', ' ### '),
  '2': rows(' ### ', '#   #', '    #', '   # ', '  #  ', ' #   ', '#####'),
  '3': rows(' ### ', '#   #', '    #', '  ## ', '    #', '#   #', ' ### '),
  '4': rows('   # ', '  ## ', ' # # ', '#  # ', '#####', '   # ', '   # '),
  '5': rows('#####', '#    ', '#### ', '    #', '    #', '#   #', ' ### '),
  '6': rows('  ## ', ' #   ', '#    ', '#### ', '#   #', '#   #', ' ### '),
  '7': rows('#####', '    #', '   # ', '  #  ', '  #  ', '  #  ', '  #  '),
  '8': rows(' ### ', '#   #', '#   #', ' ### ', '#   #', '#   #', ' ### '),
  '9': rows(' ### ', '#   #', '#   #', ' ####', '    #', '   # ', ' ##  '),
  '-': rows('     ', '     ', '     ', '#####', '     ', '     ', '     '),
  ' ': rows('     ', '     ', '     ', '     ', '     ', '     ', '     '),
  E: rows('#####', '#    ', '#    ', '#### ', '#    ', '#    ', '#####'),
  r: rows('     ', '     ', '# ## ', '##   ', '#    ', '#    ', '#    '),
  o: rows('     ', '     ', ' ### ', '#   #', '#   #', '#   #', ' ### '),
  L: rows('#    ', '#    ', '#    ', '#    ', '#    ', '#    ', '#####'),
  H: rows('#   #', '#   #', '#   #', '#####', '#   #', '#   #', '#   #'),
  P: rows('#### ', '#   #', '#   #', '#### ', '#    ', '#    ', '#    '),
  A: rows(' ### ', '#   #', '#   #', '#####', '#   #', '#   #', '#   #'),
  U: rows('#   #', '#   #', '#   #', '#   #', '#   #', '#   #', ' ### '),
};

/** The same, as other displays draw them. */
export const OTHER_DOTS: Readonly<Record<string, readonly string[]>> = {
  '0': rows(' ### ', '#   #', '#  ##', '# # #', '##  #', '#   #', ' ### '),
  '1': rows('  #  ', ' ##  ', '# #  ', '  #  ', '  #  ', '  #  ', '#####'),
  '2': rows(' ### ', '#   #', '    #', ' ### ', '#    ', '#    ', '#####'),
  '3': rows('#####', '   # ', '  #  ', '   # ', '    #', '#   #', ' ### '),
  '4': rows('#   #', '#   #', '#   #', '#####', '    #', '    #', '    #'),
  '6': rows(' ### ', '#    ', '#    ', '#### ', '#   #', '#   #', ' ### '),
  '7': rows('#####', '    #', '    #', '   # ', '   # ', '  #  ', '  #  '),
  '9': rows(' ### ', '#   #', '#   #', ' ####', '    #', '    #', ' ### '),
};
