interface Page<Item> {
  readonly items: Item[];
  readonly nextCursor: string | null;
}

/** The longest page the API gives. */
const PAGE_LIMIT = 500;

/** Every item of a list that a team keeps short (riders, bikes, tracks), page after page. */
export async function allPages<Item>(
  read: (query: { limit: number; cursor?: string }) => Promise<Page<Item>>,
): Promise<Item[]> {
  const items: Item[] = [];
  let cursor: string | null = null;
  do {
    const page: Page<Item> = await read({ limit: PAGE_LIMIT, ...(cursor !== null && { cursor }) });
    items.push(...page.items);
    cursor = page.nextCursor;
  } while (cursor !== null);
  return items;
}
