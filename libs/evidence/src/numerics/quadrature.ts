/** Nodes of the Gauss–Legendre rule of 16 points on [−1, 1], positive half, with weights; abramowitz1964, table 25.4. */
const NODES = [
  0.0950125098376374402, 0.281603550779258913, 0.458016777657227386, 0.617876244402643748,
  0.755404408355003034, 0.865631202387831744, 0.944575023073232576, 0.989400934991649933,
];
const WEIGHTS = [
  0.189450610455068496, 0.182603415044923589, 0.169156519395002538, 0.149595988816576732,
  0.124628971255533872, 0.0951585116824927848, 0.0622535239386478929, 0.0271524594117540949,
];

/** Places and weights of a composite rule. */
interface Rule {
  x: number[];
  weight: number[];
}

/** Gauss–Legendre rule of 16 points on each of `panels` equal parts of [low, high]. */
export function gaussLegendre(low: number, high: number, panels: number): Rule {
  const rule: Rule = { x: [], weight: [] };
  const half = (high - low) / panels / 2;
  for (let panel = 0; panel < panels; panel += 1) {
    const middle = low + half * (2 * panel + 1);
    for (const [i, node] of NODES.entries()) {
      const weight = half * (WEIGHTS[i] as number);
      rule.x.push(middle - half * node, middle + half * node);
      rule.weight.push(weight, weight);
    }
  }
  return rule;
}
