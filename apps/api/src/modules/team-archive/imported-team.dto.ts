import { ChoiceField, IdField, NumberField, PartsField, TextField } from '../../platform/http/fields.js';
import { ROLES, type Role } from '../../platform/http/scope.js';

class RecordCountDto {
  @TextField({ description: 'Kind of record, as the archive names it.', maxLength: 80, example: 'run' })
  table: string;

  @NumberField({
    description: 'How many were taken in.',
    unit: '1',
    integer: true,
    minimum: 0,
    maximum: 1e6,
    example: 214,
  })
  rows: number;
}

class PersonToInviteDto {
  @TextField({ description: 'Name.', maxLength: 80, example: 'Coach' })
  displayName: string;

  @ChoiceField({
    description: 'Role where the archive was made; null for who had left before.',
    choices: ROLES,
    nullable: true,
  })
  role: Role | null;
}

export class ImportedTeamDto {
  @IdField({ description: 'The new team.' })
  id: string;

  @TextField({ description: 'Its name.', maxLength: 80, example: 'Team of the north' })
  name: string;

  @PartsField({ description: 'What was taken in.', type: () => RecordCountDto, maxItems: 100 })
  records: RecordCountDto[];

  @PartsField({
    description: 'Who was in the team: records name them, and they join again by invitation.',
    type: () => PersonToInviteDto,
    maxItems: 10_000,
  })
  people: PersonToInviteDto[];
}
