import { ApiProperty } from '@nestjs/swagger';
import { ArrayMaxSize, ArrayMinSize, ArrayUnique, IsArray, IsIn } from 'class-validator';
import { IdField, MomentField, TextField } from '../../platform/http/fields.js';
import { TOKEN_SCOPES, type TokenScopeName } from '../../platform/http/access.js';

const SCOPES_ALLOWED = { context: { allowed: `some of: ${TOKEN_SCOPES.join(', ')}` } };

export class ApiTokenInputDto {
  @TextField({ description: 'What the token is for.', maxLength: 80, example: 'Timing import' })
  name: string;

  @IsArray(SCOPES_ALLOWED)
  @ArrayMinSize(1, SCOPES_ALLOWED)
  @ArrayMaxSize(TOKEN_SCOPES.length, SCOPES_ALLOWED)
  @ArrayUnique(SCOPES_ALLOWED)
  @IsIn(TOKEN_SCOPES, { ...SCOPES_ALLOWED, each: true })
  @ApiProperty({
    type: 'array',
    items: { type: 'string', enum: [...TOKEN_SCOPES] },
    example: ['read'],
    description: 'What a script may do with it.',
  })
  scopes: TokenScopeName[];
}

export class ApiTokenDto extends ApiTokenInputDto {
  @IdField({ description: 'The token.' })
  id: string;

  @IdField({ description: 'The account that made it and that it acts for.' })
  accountId: string;

  @MomentField({ description: 'When it was made.', example: '2026-05-09T10:30:00Z' })
  createdAt: string;

  @MomentField({
    description: 'When it was last used, to ten minutes; null if never.',
    nullable: true,
    example: '2026-05-09T10:30:00Z',
  })
  lastUsedAt: string | null;
}

export class NewApiTokenDto extends ApiTokenDto {
  @TextField({
    description: 'The token itself, for the header `Authorization: Bearer …`; shown this once.',
    maxLength: 64,
    example: 'lml_Q2hhbm5lbC0x',
  })
  token: string;
}
