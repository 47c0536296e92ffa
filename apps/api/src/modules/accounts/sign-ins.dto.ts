import { ChoiceField, FlagField, IdField, MomentField } from '../../platform/http/fields.js';
import { DEVICES, type Device } from '../../platform/http/request-origin.js';

export class SignInDto {
  @IdField({ description: 'The sign-in.' })
  id: string;

  @ChoiceField({ description: 'The kind of device it began on.', choices: DEVICES })
  device: Device;

  @MomentField({ description: 'When it began.', example: '2026-05-09T10:30:00Z' })
  createdAt: string;

  @MomentField({ description: 'When it was last used, to ten minutes.', example: '2026-05-09T10:30:00Z' })
  lastSeenAt: string;

  @MomentField({ description: 'When it ends at the latest.', example: '2026-06-08T10:30:00Z' })
  expiresAt: string;

  @FlagField({ description: 'Whether it is the one that asks.', example: true })
  current: boolean;
}
