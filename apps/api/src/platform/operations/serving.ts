import { Injectable } from '@nestjs/common';

/** Whether this process wants more requests. Before it stops it says no, so that a balancer turns to others first. */
@Injectable()
export class Serving {
  private leaving = false;

  get isLeaving(): boolean {
    return this.leaving;
  }

  leave(): void {
    this.leaving = true;
  }
}
