import { describe, expect, it } from 'vitest';
import {
  airSpring,
  bottomingHeight,
  braking,
  chamberPressures,
  hitHeight,
  landing,
  pressureAtVenue,
  sag,
  spacerTrade,
  springForce,
  standardAtmosphere,
  suddenLoadTravel,
  travelForHeight,
} from '@loamledger/spring';
import {
  absolutePascal,
  gaugePascalFromPsi,
  kelvin,
  PASCAL_PER_PSI,
  psiFromGaugePascal,
  radianFromDegrees,
} from '@loamledger/units';
import {
  endOf,
  fillOf,
  genericUnit,
  genericUnits,
  landingCases,
  numberOf,
  referenceOutputs,
  setUpLanding,
  unitOf,
} from './spring-reference.js';

/** A row of the table in docs/validation.md. */
interface Row {
  check: string;
  source: string;
  figure: string;
  ours: string;
  difference: string;
}

/** Below this a difference is rounding, and a matter of the machine. */
const ROUNDING = 1e-10;

/** Smallest power of ten that a difference stays below. */
function below(difference: number, unit: string): string {
  const size = Math.max(Math.abs(difference), ROUNDING / 2);
  return `< 1e${Math.floor(Math.log10(size)) + 1}${unit}`;
}

const greatest = (values: readonly number[]) => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const mm = (metres: number, digits = 3) => `${(metres * 1e3).toFixed(digits)} mm`;
const fork = genericUnit('fork170');
const forkUnit = unitOf(fork);
const forkEnd = endOf(fork);
const forkSpring = airSpring(forkUnit, fillOf(fork, 0));

function landingRows(): Row[] {
  const cases = landingCases();
  const results = cases.map((reference) => {
    const { spring, end } = setUpLanding(reference);
    return { reference, result: landing(spring, end, reference.h_m, { relativeTolerance: 1e-8 }) };
  });
  const source = 'independent tools: two integrators of a scientific library, a C program';
  const row = (check: string, unit: string, difference: (r: (typeof results)[number]) => number): Row => ({
    check: `${check}, ${cases.length} landings`,
    source,
    figure: 'each landing',
    ours: 'rtol 1e-8',
    difference: below(greatest(results.map(difference)), unit),
  });
  return [
    row('peak travel', ' m', ({ reference, result }) => result.peakTravel - numberOf(reference.outputs, 'x_peak_m')),
    row('peak time', ' s', ({ reference, result }) => result.peakTime - numberOf(reference.outputs, 't_peak_s')),
    row(
      'greatest force',
      ' of it',
      ({ reference, result }) => result.peakForce / numberOf(reference.outputs, 'F_total_max_N') - 1,
    ),
    {
      ...row('energy balance', ' of the input', ({ result }) => result.energyBalance.residual / result.energyBalance.input),
      source: 'identity',
      figure: '0',
    },
  ];
}

function staticRows(): Row[] {
  interface GasExample {
    setup: string;
    spacers: number;
    x_m: number;
    p_pos_iso_Pa: number;
    F_iso_N: number;
  }
  const examples = referenceOutputs<GasExample[]>('gas_examples');
  const pressures = examples.map(({ setup, spacers, x_m, p_pos_iso_Pa }) => {
    const g = genericUnit(setup);
    return chamberPressures(airSpring(unitOf(g), fillOf(g, spacers)), x_m).positive / p_pos_iso_Pa - 1;
  });
  const sags = Object.values(genericUnits).map(
    (g) => sag(airSpring(unitOf(g), fillOf(g, 0)), endOf(g)).travel - g.sag_mm / 1e3,
  );
  return [
    {
      check: `chamber pressure, ${examples.length} states`,
      source: 'independent code of the closed form',
      figure: 'each state',
      ours: 'closed form',
      difference: below(greatest(pressures), ' of it'),
    },
    {
      check: `sag of ${sags.length} generic units`,
      source: 'independent code',
      figure: 'each unit',
      ours: 'root',
      difference: below(greatest(sags), ' m'),
    },
  ];
}

function atmosphereRows(): Row[] {
  interface Point {
    Z_m: number;
    geometric: { P_Pa: number };
    memory_table_geometric: { P_Pa: number };
  }
  const points = referenceOutputs<Point[]>('atmosphere_us1976');
  const against = (pick: (p: Point) => number) =>
    below(greatest(points.map((p) => standardAtmosphere(p.Z_m).pressure / pick(p) - 1)), ' of it');
  return [
    {
      check: 'pressure of the standard atmosphere, 0–5000 m',
      source: 'published: US Standard Atmosphere 1976, its equations',
      figure: 'each altitude',
      ours: 'same equations',
      difference: against((p) => p.geometric.P_Pa),
    },
    {
      check: 'the same, printed table',
      source: 'from memory',
      figure: 'each altitude',
      ours: 'same equations',
      difference: against((p) => p.memory_table_geometric.P_Pa),
    },
  ];
}

function hitRows(): Row[] {
  interface Conditioning {
    setup: string;
    n: number;
    u: number;
    h: number;
  }
  const { h_conditioning } = referenceOutputs<{ h_conditioning: Conditioning[] }>('inverse_problems');
  const heights = h_conditioning.map(({ setup, n, u, h }) => {
    const g = genericUnit(setup);
    const spring = airSpring(unitOf(g), fillOf(g, n));
    const result = hitHeight(spring, endOf(g), { travelUsed: u * g.S, readingSd: 1e-3 }, { gaugeSd: 0, massSd: 0 });
    return result.status === 'solved' ? result.height - h : Infinity;
  });
  const edges = referenceOutputs<{ x_min_m?: number; h_bottom_m?: number }[]>('edge_cases');
  const least = edges.find(({ x_min_m }) => x_min_m !== undefined)?.x_min_m ?? NaN;
  const fullest = edges.find(({ h_bottom_m }) => h_bottom_m !== undefined)?.h_bottom_m ?? NaN;
  const ours = bottomingHeight(forkSpring, forkEnd);
  if (ours.status !== 'found') throw new Error(ours.status);
  return [
    {
      check: `hit height behind ${heights.length} readings`,
      source: 'independent code',
      figure: 'each reading',
      ours: 'root',
      difference: below(greatest(heights), ' m'),
    },
    {
      check: 'travel of a load put on suddenly',
      source: 'independent code',
      figure: mm(least),
      ours: mm(suddenLoadTravel(forkSpring, forkEnd).travel),
      difference: below(suddenLoadTravel(forkSpring, forkEnd).travel - least, ' m'),
    },
    {
      check: 'fullest hit (1)',
      source: 'independent code, upper end of a bisection',
      figure: `${fullest.toFixed(5)} m`,
      ours: `${ours.height.toFixed(5)} m`,
      difference: below(Math.abs(ours.height - fullest), ' m'),
    },
  ];
}

function answerRows(): Row[] {
  interface Trade {
    variant: string;
    h_m: number;
    p_equal_peak_psi: number[];
    p_equal_mid_psi: number[];
    p_equal_sag20_psi: number[];
  }
  const [trade] = referenceOutputs<Trade[]>('equal_travel_pressures');
  if (trade === undefined) throw new Error('no trade');
  const mine = spacerTrade(forkUnit, fillOf(fork, 0), forkEnd, 4, trade.h_m);
  const psi = (target: (typeof mine)['sag']) =>
    target.status === 'found' ? psiFromGaugePascal(target.gaugePressure) : NaN;
  const tradeRow = (check: string, target: (typeof mine)['sag'], figure: number | undefined): Row => ({
    check: `4 spacers in, ${check} kept (2)`,
    source: 'independent code',
    figure: `${(figure ?? NaN).toFixed(3)} psi`,
    ours: `${psi(target).toFixed(3)} psi`,
    difference: below(Math.abs(psi(target) - (figure ?? NaN)), ' psi'),
  });
  return [
    tradeRow('peak travel', mine.peakTravel, trade.p_equal_peak_psi[4]),
    tradeRow('mid-stroke force', mine.midStroke, trade.p_equal_mid_psi[4]),
    tradeRow('sag', mine.sag, trade.p_equal_sag20_psi[4]),
    ...ambientRows(),
  ];
}

function ambientRows(): Row[] {
  interface Reference {
    ambient: {
      p_a_workshop: number;
      p_a_race: number;
      T: [number, number];
      gauge_untouched_psi: number;
      real_gas_gauge_psi: number;
    };
    braking: {
      params: Record<string, number>;
      rows: { slope_deg: number; decel: number; p: number; n: number; travel_mm: number }[];
    };
  }
  const { ambient, braking: brakes } = referenceOutputs<Reference>('ambient_braking');
  const untouched = psiFromGaugePascal(
    pressureAtVenue(
      gaugePascalFromPsi(65),
      { pressure: absolutePascal(ambient.p_a_workshop), temperature: kelvin(ambient.T[0]) },
      { pressure: absolutePascal(ambient.p_a_race), temperature: kelvin(ambient.T[1]) },
    ),
  );
  const p = (key: string) => brakes.params[key] ?? NaN;
  const dives = brakes.rows.map((row) => {
    const spring = airSpring(forkUnit, {
      ...fillOf(fork, row.n),
      gaugePressure: gaugePascalFromPsi(row.p),
    });
    const result = braking(spring, {
      totalMass: p('M'),
      wheelbase: p('L'),
      centreHeight: p('h_cg'),
      centreToRear: p('b'),
      frontUnsprungMass: p('m_unsprung_front'),
      frontBrakeShare: p('front_share'),
      headAngle: radianFromDegrees(p('head_angle_ref')),
      referenceTravel: p('x_ref_mm') / 1e3,
      slope: radianFromDegrees(row.slope_deg),
      deceleration: row.decel,
    });
    return result.status === 'settled' ? result.travel - row.travel_mm / 1e3 : Infinity;
  });
  const gauge = (check: string, source: string, figure: number): Row => ({
    check,
    source,
    figure: `${figure.toFixed(3)} psi`,
    ours: `${untouched.toFixed(3)} psi`,
    difference: below(Math.abs(untouched - figure), ' psi'),
  });
  return [
    gauge('untouched fork, 65 psi, up 1700 m and 16 K colder', 'independent code', ambient.gauge_untouched_psi),
    gauge('the same as a real gas', 'published: Lemmon et al. 2000', ambient.real_gas_gauge_psi),
    {
      check: `fork travel under braking, ${dives.length} cases`,
      source: 'independent code',
      figure: 'each case',
      ours: 'root',
      difference: below(greatest(dives), ' m'),
    },
  ];
}

function tradeFactRows(): Row[] {
  const reading = { travelUsed: fork.S - 0.0025, readingSd: 1e-4 };
  const hit = hitHeight(forkSpring, forkEnd, reading, { gaugeSd: 0, massSd: 0 });
  if (hit.status !== 'solved') throw new Error(hit.message);
  const spaced = airSpring(forkUnit, fillOf(fork, 4));
  const left = fork.S - travelForHeight(spaced, forkEnd, hit.height).travel;
  const trade = spacerTrade(forkUnit, fillOf(fork, 0), forkEnd, 1, hit.height);
  const change = (target: (typeof trade)['sag']) =>
    target.status === 'found' ? (-target.change / PASCAL_PER_PSI).toFixed(1) : 'out of reach';
  const gain = (part: number) =>
    `+${(100 * (springForce(spaced, part * fork.S) / springForce(forkSpring, part * fork.S) - 1)).toFixed(0)} %`;
  return [
    {
      check: 'travel left by a big hit: 2–3 mm without, with 4 spacers',
      source: 'common practice, no source',
      figure: 'about 25 mm',
      ours: mm(left, 1),
      difference: 'the model leaves less (3)',
    },
    {
      check: 'air let out for a spacer in, fork at 65 psi',
      source: 'common practice, no source',
      figure: '3 psi, sometimes 5–10',
      ours: `${change(trade.sag)} (sag), ${change(trade.midStroke)} (middle), ${change(trade.peakTravel)} psi (peak travel)`,
      difference: 'what is kept decides (4)',
    },
    {
      check: 'force with 4 spacers at 20 % and 95 % of the travel',
      source: 'common practice, no source',
      figure: 'early the same, late much more',
      ours: `${gain(0.2)}, ${gain(0.95)}`,
      difference: 'agrees in order',
    },
  ];
}

const NOTES = `(1) The stored height bottoms with 0.02 m/s left when computed at a tolerance of 1e-11; ours is proved by landings 1 µm below and above it. All stored fullest hits are too high by up to 3e-5 m in this way.

(2) The base case; the other five forks and both hits of the file are in \`spring-trade.test.ts\`. The file's landings were computed at a looser tolerance than ours.

(3) Over plausible chambers the model leaves 7–31 mm with four spacers. A fit that met every such saying at once would be over-tuned, so tests hold order, monotonicity and range.

(4) One spacer asks for little air when the sag is to stay and for several times as much when the peak travel is to stay. The two rules of thumb keep different things; the answers are shown side by side.

(5) Where the air in an empty negative chamber is concerned the reference divides by a slope that forgets that this air grows with the chamber: it gives 4.95 mL for one reading where the model itself gives 5.75 mL (\`spring-identification.test.ts\`).

## Held in tests of their own

| check | source | test | allowed |
| --- | --- | --- | --- |
| landing on a linear spring | closed form | \`spring-linear-landing.test.ts\` | 1e-8 m, 1e-8 s |
| forces and sag at a venue, lower legs sealed or bled | independent code | \`spring-ambient-braking.test.ts\` | 1e-9 of them |
| standard uncertainty of an identified volume, 12 procedures | independent code | \`spring-identification.test.ts\` | 0.5 % of it |
| negative chamber from two pressures (5) | independent code | \`spring-identification.test.ts\` | 1e-9 of it |
| ideal gas at 95 % travel: 0.3 % off for a fork, 0.5 % for a shock | published: Lemmon et al. 2000 | \`spring-real-gas.test.ts\` | 0.4 %, 0.6 % |
| uncertainty of nine answers, of hit heights and of the negative chamber | Monte Carlo, 2000 draws | \`spring-uncertainty.test.ts\` | 5 % of it |
| coverage of identified volumes and of drop tests | Monte Carlo, 300–400 tries | \`spring-identification.test.ts\`, \`spring-drop-test.test.ts\` | binomial |
| order of the integrator | theory: 5 | \`dormand-prince.test.ts\` | 4.7–5.5 |`;

function table(rows: readonly Row[]): string {
  const lines = rows.map((r) => `| ${r.check} | ${r.source} | ${r.figure} | ${r.ours} | ${r.difference} |`);
  return ['| check | source | figure | ours | difference |', '| --- | --- | --- | --- | --- |', ...lines].join('\n');
}

const HEAD = `# Validation of the spring engine

Every figure here is computed and compared with this page by \`tests/reference/spring-validation.test.ts\`; run it with \`-u\` to write the page anew. Sources: *published*, *independent tool or code* (written apart from this engine, values kept in \`tests/reference/\`), *common practice, no source*, *from memory*. Differences are the power of ten that none of the cases exceeds. Generic units are invented.`;

describe('docs/validation.md', () => {
  it('says what the engine gives today', async () => {
    const sections: [string, Row[]][] = [
      ['Landings', landingRows()],
      ['Settled spring', staticRows()],
      ['Hit heights', hitRows()],
      ['Air around the bike', atmosphereRows()],
      ['Trades, venues, braking', answerRows()],
      ['What mechanics say', tradeFactRows()],
    ];
    const body = sections.map(([title, rows]) => `## ${title}\n\n${table(rows)}`).join('\n\n');
    await expect(`${HEAD}\n\n${body}\n\n## Notes\n\n${NOTES}\n`).toMatchFileSnapshot('../../docs/validation.md');
  });
});
