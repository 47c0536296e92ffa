import { Injectable } from '@nestjs/common';

/** A figure of this process that is read when somebody asks for it. */
export interface Gauge {
  /** In the manner of Prometheus: what is counted, in which base unit; without ids of teams or people. */
  readonly name: string;
  readonly help: string;
  read(): number;
}

/** Where parts of the service leave the figures that they can be asked for. */
@Injectable()
export class Gauges {
  private readonly known = new Map<string, Gauge>();

  add(...gauges: readonly Gauge[]): void {
    for (const gauge of gauges) this.known.set(gauge.name, gauge);
  }

  get all(): readonly Gauge[] {
    return [...this.known.values()];
  }
}
