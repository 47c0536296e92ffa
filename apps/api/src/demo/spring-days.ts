import { end, type DemoDay } from './scenario.js';

/** The first half of the invented season. */
export const SPRING_DAYS: readonly DemoDay[] = [
  {
    track: 'oatbarrel',
    weather: { day: '2026-04-11', condition: 'damp', airTemperatureC: 7, note: 'First day out; new seals.' },
    changes: [
      {
        bike: 'ashTrail',
        reason: 'First set-up of the season, by sag.',
        fork: end(80, 1, 9, 8),
        shock: end(198, 1, 8, 6),
        inWorkshop: true,
      },
      {
        bike: 'brambleEnduro',
        reason: 'First set-up of the season, by sag.',
        fork: end(77, 1, 8, 7),
        shock: end(203, 1, 7, 6),
        inWorkshop: true,
      },
      {
        bike: 'cloverEnduro',
        reason: 'First set-up of the season, by sag.',
        fork: end(51, 0, 12, 11),
        shock: end(156, 1, 10, 9),
        inWorkshop: true,
      },
      {
        bike: 'elderTrail',
        reason: 'First set-up, from what felt right last year.',
        fork: end(92, 0, 7, 6),
        shock: end(222, 0, 6, 5),
      },
    ],
    stints: [
      { bike: 'ashTrail', runs: 5, untimed: 1 },
      { bike: 'brambleEnduro', runs: 5, untimed: 1 },
      { bike: 'cloverEnduro', runs: 5, untimed: 1 },
      { bike: 'elderTrail', runs: 5, untimed: 2 },
    ],
    kept: [{ bike: 'brambleEnduro', note: 'Sag as wanted, nothing harsh.' }],
  },
  {
    track: 'lanternmoth',
    weather: { day: '2026-04-12', condition: 'damp', airTemperatureC: 9, note: 'Roots still greasy.' },
    changes: [],
    stints: [
      { bike: 'ashTrail', runs: 5 },
      { bike: 'brambleEnduro', runs: 5 },
      { bike: 'cloverEnduro', runs: 5 },
      { bike: 'elderTrail', runs: 5 },
    ],
    kept: [{ bike: 'ashTrail', note: 'Good on the roots, all travel never used.' }],
  },
  {
    track: 'kettlespoon',
    weather: { day: '2026-04-25', condition: 'dry', airTemperatureC: 13, stationPressureHpa: 876 },
    changes: [
      {
        bike: 'ashEnduro',
        reason: 'First set-up of the season, by sag.',
        fork: end(66, 0, 9, 9),
        shock: end(200, 1, 8, 7),
        inWorkshop: true,
      },
      {
        bike: 'brambleDownhill',
        reason: 'First set-up of the season, by sag.',
        fork: end(62, 1, 8, 8),
        shock: end(206, 1, 7, 7),
        inWorkshop: true,
      },
      {
        bike: 'duneDownhill',
        reason: 'First set-up of the season, by feel in the car park.',
        fork: end(46, 1, 11, 10),
        shock: end(164, 1, 9, 8),
      },
      {
        bike: 'elderTrail',
        reason: 'Sinks too deep in the corners; a spacer and a little air each.',
        fork: end(94, 1, 7, 6),
        shock: end(224, 1, 6, 5),
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 6 },
      { bike: 'brambleDownhill', runs: 5 },
      { bike: 'cloverEnduro', runs: 5 },
      { bike: 'duneDownhill', runs: 6 },
      { bike: 'elderTrail', runs: 4 },
    ],
    kept: [{ bike: 'elderTrail', note: 'Stays higher; fine for everything but the slab.' }],
  },
  {
    track: 'thimblewick',
    weather: { day: '2026-05-09', condition: 'wet', airTemperatureC: 11, note: 'Rain until ten.' },
    changes: [
      {
        bike: 'ashEnduro',
        reason: 'Used all the fork twice on Kettlespoon: one spacer, same sag.',
        fork: end(65, 1, 9, 9),
        shock: end(200, 1, 8, 7),
        track: 'thimblewick',
      },
      {
        bike: 'brambleEnduro',
        reason: 'Try more air instead of spacers for the steps.',
        fork: end(88, 1, 7, 7),
        shock: end(218, 1, 6, 6),
        track: 'thimblewick',
      },
      {
        bike: 'cloverEnduro',
        reason: 'Two spacers for the flat landing, two psi out to keep the start soft.',
        fork: end(49, 2, 12, 11),
        shock: end(154, 1, 10, 9),
        track: 'thimblewick',
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 6, untimed: 1 },
      { bike: 'brambleEnduro', runs: 5, untimed: 1 },
      { bike: 'cloverEnduro', runs: 6, untimed: 1 },
      { bike: 'duneDownhill', runs: 6, untimed: 1 },
    ],
    kept: [{ bike: 'cloverEnduro', note: 'No hard landing any more, hands fresher than before.' }],
  },
  {
    track: 'thimblewick',
    weather: { day: '2026-05-10', condition: 'damp', airTemperatureC: 14, note: 'Drying from noon on.' },
    changes: [
      {
        bike: 'brambleEnduro',
        reason: 'Too harsh on the small steps, arms tired after three runs.',
        backToRevision: 1,
      },
      {
        bike: 'duneDownhill',
        reason: 'Bottomed at the last step; two spacers more.',
        fork: end(45, 3, 11, 10),
        shock: end(162, 2, 9, 8),
        track: 'thimblewick',
      },
    ],
    stints: [
      { bike: 'ashEnduro', runs: 6 },
      { bike: 'brambleDownhill', runs: 5 },
      { bike: 'duneDownhill', runs: 5 },
      { bike: 'elderTrail', runs: 3 },
    ],
    kept: [
      { bike: 'duneDownhill', note: 'Clear gain at the last step, nothing lost before it.' },
      { bike: 'brambleDownhill', note: 'Works as it is.' },
    ],
  },
];
