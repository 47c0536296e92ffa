import { InvalidField, Refusal } from '../../platform/errors/refusal.js';

export class WrongPassword extends InvalidField {
  constructor() {
    // What was given is a password, and not to be repeated.
    super('password.wrong', 'oldPassword', null, 'the password as it is');
  }
}

export class PasswordLinkGone extends Refusal {
  constructor() {
    super(
      'password-link.gone',
      'forbidden',
      'This link was used, has expired, or never was. Ask for a new one.',
    );
  }
}
