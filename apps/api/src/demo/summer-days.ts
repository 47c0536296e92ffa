import { end, type DemoDay } from './scenario.js';

/** The second half of the invented season. */
export const SUMMER_DAYS: readonly DemoDay[] = [
  {
    track: 'lanternmoth',
    weather: { day: '2026-05-23', condition: 'dry', airTemperatureC: 19 },
    changes: [
      {
        bike: 'ashTrail',
        reason: 'Give air for a spacer: softer on the roots with the same end.',
        fork: end(75, 2, 9, 8),
        shock: end(194, 2, 8, 6),
        track: 'lanternmoth',
        atWorkbench: true,
      },
    ],
    stints: [
      { bike: 'ashTrail', runs: 6, untimed: 1 },
      { bike: 'cloverEnduro', runs: 4 },
      { bike: 'elderTrail', runs: 6, untimed: 1 },
    ],
    kept: [{ bike: 'ashTrail', note: 'Comfort up, same travel left as before.' }],
  },
  {
    track: 'copperfinch',
    weather: {
      day: '2026-06-06',
      condition: 'dry',
      airTemperatureC: 8,
      stationPressureHpa: 818,
      note: 'Cold start, wind on the scree.',
    },
    changes: [
      {
        bike: 'ashEnduro',
        reason: 'Three drops: two spacers more in the fork, one in the shock.',
        fork: end(65, 3, 8, 8),
        shock: end(194, 3, 7, 6),
        track: 'copperfinch',
      },
      {
        bike: 'brambleDownhill',
        reason: 'More support for the drops.',
        fork: end(62, 3, 8, 8),
        shock: end(200, 2, 7, 7),
        track: 'copperfinch',
      },
      {
        bike: 'cloverEnduro',
        reason: 'Copperfinch is rougher than anything so far: a spacer each.',
        fork: end(49, 3, 11, 10),
        shock: end(150, 3, 9, 8),
        track: 'copperfinch',
      },
      {
        bike: 'elderTrail',
        reason: 'All spacers in to get down at all.',
        fork: end(98, 4, 6, 5),
        shock: end(224, 4, 5, 4),
        track: 'copperfinch',
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 5, untimed: 1 },
      { bike: 'brambleDownhill', runs: 6, untimed: 1 },
      { bike: 'cloverEnduro', runs: 5, untimed: 1 },
      { bike: 'duneDownhill', runs: 6, untimed: 1 },
      { bike: 'elderTrail', runs: 4, untimed: 2 },
    ],
    kept: [{ bike: 'ashEnduro', note: 'Last 10 mm only on the nest drops.' }],
  },
  {
    track: 'copperfinch',
    weather: { day: '2026-06-07', condition: 'dusty', airTemperatureC: 12 },
    changes: [
      {
        bike: 'brambleDownhill',
        reason: 'Still used it all at the second drop; two psi and one more spacer.',
        fork: end(64, 4, 8, 7),
        shock: end(200, 3, 7, 6),
        track: 'copperfinch',
        atWorkbench: true,
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 5 },
      { bike: 'brambleDownhill', runs: 6 },
      { bike: 'brambleEnduro', runs: 3 },
      { bike: 'duneDownhill', runs: 6 },
    ],
    kept: [{ bike: 'brambleDownhill', note: 'Kept for rough tracks.' }],
  },
  {
    track: 'kettlespoon',
    weather: { day: '2026-06-20', condition: 'dusty', airTemperatureC: 24 },
    changes: [
      {
        bike: 'elderTrail',
        reason: 'Full of spacers it was a plank on everything else.',
        backToRevision: 2,
      },
      {
        bike: 'brambleEnduro',
        reason: 'Spacers instead of air this time: two more, air out to the old sag.',
        fork: end(74, 3, 8, 7),
        shock: end(196, 2, 7, 6),
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 5 },
      { bike: 'brambleEnduro', runs: 6 },
      { bike: 'cloverEnduro', runs: 6 },
      { bike: 'duneDownhill', runs: 4 },
      { bike: 'elderTrail', runs: 5 },
    ],
    kept: [{ bike: 'elderTrail', note: 'Back to what works on smooth tracks.' }],
  },
  {
    track: 'oatbarrel',
    weather: { day: '2026-07-04', condition: 'dry', airTemperatureC: 26 },
    changes: [],
    stints: [
      { bike: 'ashTrail', runs: 5, untimed: 1 },
      { bike: 'cloverEnduro', runs: 4 },
      { bike: 'elderTrail', runs: 5, untimed: 1 },
    ],
    kept: [],
  },
  {
    track: 'thimblewick',
    weather: { day: '2026-07-18', condition: 'dry', airTemperatureC: 22, note: 'Hard and fast.' },
    changes: [
      {
        bike: 'ashEnduro',
        reason: 'Dry steps are quicker: try a firmer shock, fork as it was.',
        fork: end(65, 3, 8, 8),
        shock: end(202, 3, 7, 6),
        track: 'thimblewick',
        atWorkbench: true,
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 6 },
      { bike: 'brambleDownhill', runs: 5 },
      { bike: 'cloverEnduro', runs: 5 },
      { bike: 'duneDownhill', runs: 5 },
    ],
    kept: [],
  },
];
