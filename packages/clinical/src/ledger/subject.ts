/** Whose notes they are. A subject is written `kind/id`, so that a ledger, a lock and a web address name it alike. */
export const subjectKinds = ['patient', 'session', 'unit', 'protocol', 'batch', 'pack', 'register'] as const;
export type SubjectKind = (typeof subjectKinds)[number];
export type Subject = `${SubjectKind}/${string}`;

export const subject = (kind: SubjectKind, id: string): Subject => `${kind}/${id}`;

export function parseSubject(text: string): { kind: SubjectKind; id: string } | undefined {
  const match = /^([a-z]+)\/([A-Za-z0-9._-]{1,80})$/.exec(text);
  const kind = subjectKinds.find((candidate) => candidate === match?.[1]);
  return kind === undefined || match?.[2] === undefined ? undefined : { kind, id: match[2] };
}

export const subjectId = (of: Subject): string => of.slice(of.indexOf('/') + 1);
export const isSubjectOf = (kind: SubjectKind, of: Subject): boolean => of.startsWith(`${kind}/`);
