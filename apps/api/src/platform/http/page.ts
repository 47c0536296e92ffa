import { ApiProperty } from '@nestjs/swagger';
import { IsInt, IsOptional, IsUUID, Max, Min } from 'class-validator';
import { Type } from 'class-transformer';

const DEFAULT_LIMIT = 50;
const MAX_LIMIT = 500;

/** Where a page of a list starts and how long it is. */
export class PageQuery {
  @IsOptional()
  @IsUUID(undefined, { context: { allowed: 'the nextCursor of the page before' } })
  @ApiProperty({
    required: false,
    type: 'string',
    format: 'uuid',
    description: 'The `nextCursor` of the page before; without it the list starts at its newest.',
  })
  cursor?: string;

  @IsOptional()
  @Type(() => Number)
  @IsInt({ context: { allowed: `a whole number from 1 to ${MAX_LIMIT}` } })
  @Min(1, { context: { allowed: `a whole number from 1 to ${MAX_LIMIT}` } })
  @Max(MAX_LIMIT, { context: { allowed: `a whole number from 1 to ${MAX_LIMIT}` } })
  @ApiProperty({
    required: false,
    type: 'integer',
    minimum: 1,
    maximum: MAX_LIMIT,
    default: DEFAULT_LIMIT,
    description: 'How many items at most.',
  })
  limit: number = DEFAULT_LIMIT;
}

/** A page of a list, newest first, and where the next one starts. */
export interface Page<Item> {
  items: Item[];
  nextCursor: string | null;
}

/** The OpenAPI class of a page of `item`. */
export function pageOf<Item extends object>(item: new () => Item): new () => Page<Item> {
  class PageDto {
    @ApiProperty({ type: item, isArray: true, description: 'Newest first.' })
    items: Item[];

    @ApiProperty({
      type: 'string',
      format: 'uuid',
      nullable: true,
      description: 'Send it as `cursor` for the next page; null on the last.',
    })
    nextCursor: string | null;
  }
  Object.defineProperty(PageDto, 'name', { value: `${item.name.replace(/Dto$/, '')}PageDto` });
  return PageDto;
}

/**
 * Makes a page of rows that were read with one row more than asked for: the extra row only tells that there is
 * a next page.
 */
export function toPage<Row extends { id: string }, Item>(
  rows: readonly Row[],
  limit: number,
  toItem: (row: Row) => Item,
): Page<Item> {
  const shown = rows.slice(0, limit);
  return {
    items: shown.map(toItem),
    nextCursor: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
  };
}
