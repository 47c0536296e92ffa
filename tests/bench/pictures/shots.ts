/** One picture of the guides: whose page, and what of it. */
export interface Shot {
  /** Name of the file in docs/pictures. */
  readonly name: string;
  readonly who: 'mechanic' | 'rider';
  /** Below the team, with `{track}` and `{bike}` for one of the demo's. */
  readonly path: string;
  readonly size: 'screen' | 'phone';
  /** Shown when the page is whole. */
  readonly waitFor: string;
  /** Where the picture begins, for what stands further down. */
  readonly from?: string;
}

/** In the order of the guides. */
export const SHOTS: readonly Shot[] = [
  { name: 'pit', who: 'mechanic', path: 'pit', size: 'screen', waitFor: 'table' },
  { name: 'bike', who: 'mechanic', path: 'bikes/{bike}', size: 'screen', waitFor: 'h2' },
  {
    name: 'workbench',
    who: 'mechanic',
    path: 'bikes/{bike}/workbench?trackId={track}',
    size: 'screen',
    waitFor: 'main svg',
  },
  { name: 'track', who: 'mechanic', path: 'tracks/{track}', size: 'screen', waitFor: 'main svg' },
  {
    name: 'baseline',
    who: 'mechanic',
    path: 'tracks/{track}',
    size: 'screen',
    waitFor: 'main svg',
    from: 'section:has(> div > h2:text-is("Baselines"))',
  },
  { name: 'weekend', who: 'mechanic', path: 'weekend?trackId={track}', size: 'screen', waitFor: 'h1' },
  { name: 'decisions', who: 'mechanic', path: 'decisions', size: 'screen', waitFor: 'article, li' },
  { name: 'my-bike', who: 'rider', path: 'my-bike', size: 'phone', waitFor: 'main svg' },
  { name: 'log-run', who: 'rider', path: 'my-bike/log-run', size: 'phone', waitFor: 'form' },
];
