import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { Role } from '../../platform/http/scope.js';
import { AccountEntity } from './account.entity.js';
import type { AccountUnits } from './account-units.js';

/** What a person brings, and the id that the account will have. */
export type NewAccount = Pick<AccountEntity, 'id' | 'email' | 'displayName' | 'passwordHash'>;

export interface Membership {
  teamId: string;
  teamName: string;
  role: Role;
  riderId: string | null;
}

@Injectable()
export class AccountsQueries {
  async insertAccount(transaction: Transaction, account: NewAccount): Promise<void> {
    await transaction.insert(AccountEntity, account);
  }

  async signInCandidate(
    transaction: Transaction,
    email: string,
  ): Promise<{ id: string; passwordHash: string } | undefined> {
    const rows: { id: string; password_hash: string }[] = await transaction.query(
      'select id, password_hash from sign_in_candidate($1)',
      [email],
    );
    const row = rows[0];
    return row && { id: row.id, passwordHash: row.password_hash };
  }

  async requireAccount(transaction: Transaction, id: string): Promise<Omit<AccountEntity, 'passwordHash'>> {
    return transaction.findOneOrFail(AccountEntity, {
      where: { id },
      // The password hash cannot be read.
      select: {
        id: true,
        email: true,
        displayName: true,
        createdAt: true,
        pressureUnit: true,
        massUnit: true,
        temperatureUnit: true,
        version: true,
      },
    });
  }

  /** Changes the units if they still have `version`; says whether they had. */
  async changeUnits(
    transaction: Transaction,
    id: string,
    version: number,
    { pressure, mass, temperature }: AccountUnits,
  ): Promise<boolean> {
    const { affected } = await transaction.update(
      AccountEntity,
      { id, version },
      { pressureUnit: pressure, massUnit: mass, temperatureUnit: temperature, version: version + 1 },
    );
    return affected === 1;
  }

  async memberships(transaction: Transaction, accountId: string): Promise<Membership[]> {
    return transaction.query(
      `select member.team_id as "teamId", team.name as "teamName", member.role, member.rider_id as "riderId"
       from member join team on team.id = member.team_id
       where member.account_id = $1
       order by team.name, member.team_id`,
      [accountId],
    );
  }

  /** Uses a sign-in link, once: whose it is, or nothing where it is used up. */
  async useSignInLink(
    statements: Transaction,
    tokenHash: string,
  ): Promise<{ accountId: string; endsOthers: boolean } | undefined> {
    const rows: { accountId: string; endsOthers: boolean }[] = await statements.query(
      'select account_id as "accountId", ends_others as "endsOthers" from use_sign_in_link($1)',
      [tokenHash],
    );
    return rows[0];
  }

  async openInvitation(
    transaction: Transaction,
    tokenHash: string,
  ): Promise<{ teamId: string; id: string; role: Role; riderId: string | null } | undefined> {
    const rows: { teamId: string; id: string; role: Role; riderId: string | null }[] =
      await transaction.query(
        'select team_id as "teamId", id, role, rider_id as "riderId" from open_invitation($1)',
        [tokenHash],
      );
    return rows[0];
  }
}
