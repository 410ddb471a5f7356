interface Row {
  /** The address, without the part after the #. */
  path: string;
  /** The file that draws it, from `client/`. */
  file: string;
  /** The parts after the #, in this order, with slashes between. Without these the link is not complete. */
  needs: readonly string[];
  /** These may be left out. */
  may: readonly string[];
}

/**
 * Every screen of the app. Only data: the server reads this table too. Keys come after the #, because a browser
 * never sends that part.
 */
export const SCREENS = {
  home: { path: '/', file: 'home/home-page.tsx', needs: [], may: [] },
  /** `proof`: only in a link that is scanned or sent. */
  join: { path: '/join', file: 'join/join-page.tsx', needs: [], may: ['code', 'proof'] },
  /** A phone without a code asks the panel. `word`: of the job, such as "KILO-417". */
  ask: { path: '/ask', file: 'join/ask-page.tsx', needs: [], may: ['word'] },
  /** A phone meets the panel's without a server. `code`: that of the panel's phone. */
  meet: { path: '/meet', file: 'meeting/meet-page.tsx', needs: [], may: ['code'] },
  /** Whether this device is signed in, and what its account has. */
  account: { path: '/account', file: 'account/account-page.tsx', needs: [], may: [] },
  /** `secret`: of an invitation to an account. */
  invited: { path: '/invited', file: 'account/invited-page.tsx', needs: ['secret'], may: [] },
  /** Where the provider leads back to, at which people of the firm sign in. */
  'signed-in': { path: '/signed-in', file: 'account/signed-in-page.tsx', needs: [], may: [] },
  /** All sites of the firm in figures, for a supervisor. */
  figures: { path: '/all-sites', file: 'account/figures-page.tsx', needs: [], may: [] },
  /** Who read what, for an administrator. `log`: only of this job or site. */
  reads: { path: '/who-read', file: 'account/reads-page.tsx', needs: [], may: ['log'] },
  /** How a phone is told to trust the server's own certificate. Works over plain HTTP. */
  trust: { path: '/trust', file: 'trust/trust-page.tsx', needs: [], may: [] },
  /** `fresh`: "new" opens a new job, although this device is in one. */
  practice: { path: '/practice', file: 'practising/practice-page.tsx', needs: [], may: [] },
  /** The ways for one person alone, and what the evidence of each is worth. */
  alone: { path: '/alone', file: 'alone/alone-page.tsx', needs: [], may: [] },
  /** `fresh`: "new" opens a new job; `alone`: in this way. */
  panel: { path: '/panel', file: 'panel/panel-page.tsx', needs: [], may: ['fresh', 'alone'] },
  emitter: { path: '/emitter', file: 'emitter/emitter-page.tsx', needs: [], may: [] },
  review: { path: '/watch', file: 'review/review-page.tsx', needs: ['token'], may: [] },
  /** The token opens a job or a site; `job`: only the pair of this visit. */
  report: { path: '/report', file: 'report/report-page.tsx', needs: ['token'], may: ['job'] },
  /** From here on the token is that of a site: the desk's, or the watchers'. */
  board: { path: '/site', file: 'board/board-page.tsx', needs: ['token'], may: [] },
  'new-site': { path: '/site/new', file: 'planning/new-site-page.tsx', needs: [], may: [] },
  /** Without `pair`: the plan of a new one. */
  plan: { path: '/site/plan', file: 'planning/plan-page.tsx', needs: ['token'], may: ['pair'] },
  import: { path: '/site/import', file: 'planning/import-page.tsx', needs: ['token'], may: [] },
  visit: { path: '/site/pair', file: 'visit/visit-page.tsx', needs: ['token', 'job'], may: [] },
} as const satisfies Record<string, Row>;

export type ScreenName = keyof typeof SCREENS;
type Needs<S extends ScreenName> = (typeof SCREENS)[S]['needs'][number];
type May<S extends ScreenName> = (typeof SCREENS)[S]['may'][number];

/** What a screen gets from its address. A part that is left out is ''. */
export type PartsOf<S extends ScreenName> = Record<Needs<S> | May<S>, string>;

/** What a link to a screen needs. */
export type Given<S extends ScreenName> = Record<Needs<S>, string> & { [P in May<S>]?: string | undefined };
