import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class RiderRoleNeedsRider extends InvalidField {
  constructor() {
    super('invitation.rider-missing', 'riderId', null, 'a rider of this team, since the role is rider');
  }
}

export class LastMechanic extends Refusal {
  constructor() {
    super('member.last-mechanic', 'conflict', 'A team keeps at least one mechanic.');
  }
}
