/** Bodies are checked against their kind here, at the edge: every wrong field is named, with what to write instead. */
import { type BodyOfKind, type KindName, kindNamed } from '../kinds/index.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

export type CheckedBody<Kind extends KindName> =
  | { readonly body: BodyOfKind<Kind> }
  | { readonly refusals: readonly Refusal[] };

/** `path` is where the body stands in what was sent: "line.body". */
export function checkedBody<Kind extends KindName>(kind: Kind, body: unknown, path: string): CheckedBody<Kind> {
  const parsed = kindNamed(kind).body.safeParse(body);
  if (parsed.success) return { body: parsed.data as BodyOfKind<Kind> };
  const { help, label } = kindNamed(kind);
  return {
    refusals: parsed.error.issues.map((issue) => {
      const field = [path, ...issue.path.map(String)].join('.');
      return refusal('field-wrong', `${label}: ${issue.message}`, { field, remedy: help });
    }),
  };
}

export const fieldWrong = (field: string, says: string, remedy: string): Refusal =>
  refusal('field-wrong', says, { field, remedy });
