import { FlagField, IdField, NumberField, PartsField, TextField } from '../../platform/http/fields.js';
import { PASSWORD_LENGTH } from './accounts.dto.js';

const NEW_PASSWORD = {
  description: 'The new password. Spaces at its ends are part of it.',
  untrimmed: true,
  ...PASSWORD_LENGTH,
  example: 'a long sentence is best',
};

const REVOKES_TOKENS = {
  description:
    'Whether the API tokens that act for the account end too, in all of its teams; left out, they stay in force.',
  optional: true,
  example: true,
};

export class ActingTokensDto {
  @IdField({ description: 'The team that they are for.' })
  teamId: string;

  @TextField({ description: 'Name of the team.', maxLength: 80, example: 'Demo team' })
  teamName: string;

  @NumberField({
    description: 'API tokens in force that act for the account.',
    unit: '1',
    integer: true,
    minimum: 1,
    maximum: 1_000_000,
    example: 2,
  })
  tokens: number;
}

export class TokensInForceDto {
  @PartsField({
    description: 'API tokens that act for the account, by team; they know of no password and outlive it.',
    type: () => ActingTokensDto,
    maxItems: 100,
  })
  inForce: ActingTokensDto[];
}

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

  @FlagField(REVOKES_TOKENS)
  revokesTokens?: boolean;
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

  @FlagField(REVOKES_TOKENS)
  revokesTokens?: boolean;
}
