import { readFileSync } from 'node:fs';
import { Member, PASSWORD } from './member.js';
import type { TestService } from './service.js';

/** A stored thing as the API answers it. */
export interface Stored {
  readonly id: string;
  readonly version: number;
  readonly [field: string]: unknown;
}

/** A team with one bike under one rider on one track, ready for set-ups and runs. */
export interface TestTeam {
  readonly id: string;
  /** Path of the team. */
  readonly path: string;
  readonly mechanic: Member;
  readonly coach: Member;
  readonly riderMember: Member;
  readonly rider: Stored;
  readonly fork: Stored;
  readonly shock: Stored;
  readonly bike: Stored;
  readonly track: Stored;
}

interface GenericUnit {
  readonly S: number;
  readonly A: number;
  readonly A_shaft: number;
  readonly Vp0: number;
  readonly v_s: number;
  readonly Vn0: number;
  readonly x_t: number;
  readonly L_b: number;
  readonly F_b: number;
  readonly c_l: number;
  readonly v_k: number;
  readonly c_h: number;
  readonly F_f: number;
  readonly max_spacers: number;
}

const { fork170, shock_progressive: shockProgressive } = (
  JSON.parse(readFileSync(new URL('../../reference/generic_units.json', import.meta.url), 'utf8')) as {
    outputs: {
      fork170: GenericUnit & { Vc0: number; A_c: number };
      shock_progressive: GenericUnit & { lr: readonly number[] };
    };
  }
).outputs;

const unitBody = (unit: GenericUnit) => ({
  sources: { strokeMm: 'measured' },
  strokeMm: unit.S * 1e3,
  boreAreaMm2: unit.A * 1e6,
  shaftAreaMm2: unit.A_shaft * 1e6,
  positiveVolumeMl: unit.Vp0 * 1e6,
  spacerVolumeMl: unit.v_s * 1e6,
  negativeVolumeMl: unit.Vn0 * 1e6,
  transferPositionMm: unit.x_t * 1e3,
  bumperLengthMm: unit.L_b * 1e3,
  bumperEndForceN: unit.F_b,
  damperLowSpeedNsPerM: unit.c_l,
  damperKneeSpeedMPerS: unit.v_k,
  damperHighSpeedNsPerM: unit.c_h,
  sealFrictionN: unit.F_f,
  maxSpacers: unit.max_spacers,
});

export const FORK = {
  ...unitBody(fork170),
  name: 'Fork 1',
  kind: 'fork',
  lowerLegVolumeMl: fork170.Vc0 * 1e6,
  lowerLegAreaMm2: fork170.A_c * 1e6,
  minPressurePsi: 40,
  maxPressurePsi: 120,
};

export const SHOCK = {
  ...unitBody(shockProgressive),
  name: 'Shock 1',
  kind: 'shock',
  minPressurePsi: 100,
  maxPressurePsi: 300,
};

const leverageTable = Array.from({ length: 11 }, (_, step) => {
  const [start = 0, slope = 0, bend = 0] = shockProgressive.lr;
  const share = step / 10;
  return {
    shockTravelMm: share * shockProgressive.S * 1e3,
    leverageRatio: start + slope * share + bend * share ** 2,
  };
});

export const BIKE = {
  name: 'Bike 1',
  category: 'enduro',
  massKg: 15.5,
  frontUnsprungMassKg: 4.3,
  rearUnsprungMassKg: 5,
  headAngleDeg: 64,
  wheelbaseMm: 1_250,
  frontWheelTravelMm: 170,
  rearWheelTravelMm: 167,
  leverageTable,
};

/** Pressures and spacers within the limits of both units. */
export const SETUP = {
  fork: { pressurePsi: 65, spacers: 1, reboundClicks: 8 },
  shock: { pressurePsi: 180, spacers: 1, reboundClicks: 6 },
  reason: 'First ride.',
};

/** Founds a team with a mechanic, a coach and a rider, and enters its records. */
export async function foundTeam(service: Pick<TestService, 'url'>, name = 'Team 1'): Promise<TestTeam> {
  const mechanic = await new Member(service).signUp();
  const { id } = (await mechanic.post('/teams', { name }).expect(201)).body as Stored;
  const path = `/teams/${id}`;
  const create = async (things: string, body: object) =>
    (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
  const rider = await create('riders', { name: 'Rider A', readyMassKg: 84 });
  const fork = await create('spring-units', FORK);
  const shock = await create('spring-units', SHOCK);
  for (const { kind: unitKind, spacerVolumeMl } of [FORK, SHOCK]) {
    await create('spacer-movements', { unitKind, spacerVolumeMl, reason: 'counted', spacers: 6 });
  }
  const bike = await create('bikes', {
    ...BIKE,
    riderId: rider.id,
    forkUnitId: fork.id,
    shockUnitId: shock.id,
  });
  const track = await create('tracks', { name: 'Quarry Stairs', altitudeM: 1_450 });
  const team = { id, path, mechanic, rider, fork, shock, bike, track };
  const coach = await join(service, team, { role: 'coach' });
  const riderMember = await join(service, team, { role: 'rider', riderId: rider.id });
  return { ...team, coach, riderMember };
}

/** A new person who joins the team by invitation. */
export async function join(
  service: Pick<TestService, 'url'>,
  team: Pick<TestTeam, 'path' | 'mechanic'>,
  place: { role: string; riderId?: string },
): Promise<Member> {
  const member = new Member(service);
  const token = await invite(team, place);
  const person = { email: member.email, password: PASSWORD, displayName: place.role, token };
  member.keep(await member.post('/invitations/accept', person).expect(201));
  return member;
}

/** A script with a new token of the team. */
export async function script(
  service: Pick<TestService, 'url'>,
  team: Pick<TestTeam, 'path' | 'mechanic'>,
  scopes: readonly string[],
): Promise<Member> {
  const { body } = await team.mechanic.post(`${team.path}/tokens`, { name: 'Script', scopes }).expect(201);
  return new Member(service).use((body as { token: string }).token);
}

/** The token of a new invitation. */
export async function invite(
  team: Pick<TestTeam, 'path' | 'mechanic'>,
  place: { role: string; riderId?: string },
): Promise<string> {
  const { body } = await team.mechanic.post(`${team.path}/invitations`, place).expect(201);
  return (body as { path: string }).path.replace('/join#', '');
}
