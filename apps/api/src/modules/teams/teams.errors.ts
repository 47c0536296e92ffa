import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class RiderRoleNeedsRider extends InvalidField {
  constructor() {
    super('invitation.rider-missing', 'riderId', null, 'a rider of this team, since the role is rider');
  }
}

export class OnlyForRiders extends Refusal {
  constructor() {
    super(
      'sign-in-link.only-for-riders',
      'conflict',
      'A sign-in link is for somebody who rides in this team and is in no other: anybody else signs in with the password.',
    );
  }
}

export class InAnotherTeam extends Refusal {
  constructor() {
    super(
      'password-link.in-another-team',
      'conflict',
      'This person is in another team too, which the link would open: it is for who is in this team only.',
    );
  }
}

export class NotForOneself extends Refusal {
  constructor() {
    super('password-link.own', 'conflict', 'Your own password you change under your name, with the old one.');
  }
}

export class LastMechanic extends Refusal {
  constructor() {
    super('member.last-mechanic', 'conflict', 'A team keeps at least one mechanic.');
  }
}
