import { ApiProperty } from '@nestjs/swagger';
import {
  ChoiceField,
  EmailField,
  IdField,
  PartField,
  PartsField,
  TextField,
} from '../../platform/http/fields.js';
import { ROLES, type Role } from '../../platform/http/scope.js';
import { UnitsDto } from './units.dto.js';

export const PASSWORD_LENGTH = { minLength: 10, maxLength: 200 };

export class CredentialsDto {
  @EmailField({ description: 'E-mail address.' })
  email: string;

  @TextField({
    description: 'Password. Spaces at its ends are part of it.',
    untrimmed: true,
    ...PASSWORD_LENGTH,
    example: 'a long sentence is best',
  })
  password: string;
}

export class SignUpDto extends CredentialsDto {
  @TextField({ description: 'Name that team mates see.', maxLength: 80, example: 'Workshop' })
  displayName: string;
}

export class JoinDto extends SignUpDto {
  @TextField({ description: 'Token of the invitation link.', maxLength: 64, example: 'Q2hhbm5lbC0x…' })
  token: string;
}

export class SignInLinkTokenDto {
  @TextField({ description: 'Token of the sign-in link.', maxLength: 64, example: 'Q2hhbm5lbC0x…' })
  token: string;
}

export class MembershipDto {
  @IdField({ description: 'The team.' })
  teamId: string;

  @TextField({ description: 'Name of the team.', maxLength: 80, example: 'Demo team' })
  teamName: string;

  @ChoiceField({ description: 'Role in the team.', choices: ROLES })
  role: Role;

  @IdField({ description: 'The rider that this person is; null for who does not ride.', nullable: true })
  riderId: string | null;
}

export class AccountDto {
  @IdField({ description: 'The account.' })
  id: string;

  @ApiProperty({
    type: 'string',
    format: 'email',
    example: 'mechanic@team.example',
    description: 'E-mail address.',
  })
  email: string;

  @TextField({ description: 'Name that team mates see.', maxLength: 80, example: 'Workshop' })
  displayName: string;

  @PartsField({ description: 'Teams of this person.', type: () => MembershipDto, maxItems: 100 })
  memberships: MembershipDto[];

  @PartField({ description: 'Units in which pages show figures to this person.', type: () => UnitsDto })
  units: UnitsDto;
}
