const ids = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}|[0-9a-f]{64}/g;

/** Whether an answer tells batch PA-2391, also by its last four signs. Ids and hashes are drawn, and may hold the same four by chance. */
export const tellsBatch = (body: string): boolean => body.replaceAll(ids, '').includes('2391');
