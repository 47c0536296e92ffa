import { TextField } from '../../platform/http/fields.js';
import { PASSWORD_LENGTH } from './accounts.dto.js';

const NEW_PASSWORD = {
  description: 'The new password. Spaces at its ends are part of it.',
  untrimmed: true,
  ...PASSWORD_LENGTH,
  example: 'a long sentence is best',
};

export class PasswordChangeDto {
  @TextField({
    description: 'The password as it is.',
    untrimmed: true,
    minLength: 1,
    maxLength: PASSWORD_LENGTH.maxLength,
    example: 'the sentence before',
  })
  oldPassword: string;

  @TextField(NEW_PASSWORD)
  newPassword: string;
}

export class NewPasswordDto {
  @TextField({
    description: 'Token of the link for a new password.',
    maxLength: 64,
    example: 'Q2hhbm5lbC0x…',
  })
  token: string;

  @TextField(NEW_PASSWORD)
  newPassword: string;
}
