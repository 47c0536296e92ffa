import { ChoiceField, FlagField, IdField, MomentField, TextField } from '../../platform/http/fields.js';
import { ROLES, type Role } from '../../platform/http/scope.js';

export class TeamInputDto {
  @TextField({ description: 'Name of the team.', maxLength: 80, example: 'Demo team' })
  name: string;
}

export class TeamDto extends TeamInputDto {
  @IdField({ description: 'The team.' })
  id: string;
}

export class MemberDto {
  @IdField({ description: 'The membership.' })
  id: string;

  @IdField({ description: 'The account.' })
  accountId: string;

  @TextField({ description: 'Name of the person.', maxLength: 80, example: 'Workshop' })
  displayName: string;

  @ChoiceField({ description: 'Role in the team.', choices: ROLES })
  role: Role;

  @IdField({ description: 'The rider that this person is.', nullable: true })
  riderId: string | null;
}

export class InvitationInputDto {
  @ChoiceField({ description: 'Role of who joins.', choices: ROLES, example: 'rider' })
  role: Role;

  @IdField({ description: 'The rider who joins; needed for the role rider.', optional: true, nullable: true })
  riderId?: string | null;
}

export class SignInLinkInputDto {
  @FlagField({
    description: 'Whether using the link ends every other sign-in of the rider, as when the phone was lost.',
    example: true,
  })
  endsOthers: boolean;
}

export class SignInLinkDto {
  @IdField({ description: 'The link.' })
  id: string;

  @TextField({
    description: 'Path of the single-use link on this service; shown once.',
    maxLength: 200,
    example: '/sign-in-link#Q2hhbm5lbC0x',
  })
  path: string;

  @MomentField({ description: 'When the link ends.', example: '2026-05-09T10:30:00Z' })
  expiresAt: string;
}

export class PasswordLinkDto {
  @IdField({ description: 'The link.' })
  id: string;

  @TextField({
    description: 'Path of the single-use link on this service; shown once.',
    maxLength: 200,
    example: '/new-password#Q2hhbm5lbC0x',
  })
  path: string;

  @MomentField({ description: 'When the link ends.', example: '2026-05-09T10:30:00Z' })
  expiresAt: string;
}

export class InvitationDto {
  @IdField({ description: 'The invitation.' })
  id: string;

  @TextField({
    description: 'Path of the single-use link on this service; shown once.',
    maxLength: 200,
    example: '/join#Q2hhbm5lbC0x',
  })
  path: string;

  @MomentField({ description: 'When the link ends.', example: '2026-05-09T10:30:00Z' })
  expiresAt: string;
}
