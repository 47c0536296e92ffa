import { Refusal } from '../../platform/errors/refusal.js';

export class SignUpClosed extends Refusal {
  constructor() {
    super('sign-up.closed', 'forbidden', 'New accounts are made by invitation only.');
  }
}

export class EmailTaken extends Refusal {
  constructor(email: string) {
    super('sign-up.email-taken', 'conflict', 'There is an account with this e-mail address already.', [
      { field: 'email', given: email, allowed: 'an address without an account' },
    ]);
  }
}

/** Said of a wrong address and a wrong password alike, so that nobody learns which addresses exist. */
export class WrongCredentials extends Refusal {
  constructor() {
    super('sign-in.wrong-credentials', 'unauthenticated', 'The e-mail address or the password is wrong.');
  }
}

export class SignInLinkGone extends Refusal {
  constructor() {
    super(
      'sign-in-link.gone',
      'forbidden',
      'This link was used, has expired, or never was. Ask for a new one.',
    );
  }
}

export class InvitationGone extends Refusal {
  constructor() {
    super('invitation.gone', 'forbidden', 'This invitation was used, has expired, or never was.');
  }
}
