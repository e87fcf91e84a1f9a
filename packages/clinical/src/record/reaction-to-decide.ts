/**
 * Which reactions hold every dose until a prescriber has decided about them (docs/readiness.md R8): one called severe or graded so
 * (CTCAE: 3 is severe), and, whatever it was called, one after which the medicine is not simply given again: anaphylaxis, an
 * inflamed eye (clinical 4d: rechallenge is avoided or a specialist's decision, from memory) and dying bone of the jaw (4c).
 */
import type { GradedTerm } from '../formulas/grade-texts.ts';
import { severityOfGrade } from '../formulas/reaction-grade.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from './patient-record.ts';

const whateverItWasCalled: ReadonlySet<GradedTerm> = new Set(['anaphylaxis', 'uveitis', 'osteonecrosis of the jaw']);

/** What a reaction that holds is called: "uveitis", "severe reaction". Undefined: it holds nothing. */
function holdsAs({ severity, term, grade }: BodyOfKind<'reaction'>): string | undefined {
  if (term !== undefined && whateverItWasCalled.has(term)) return term;
  const isSevere = severity === 'severe' || (grade !== undefined && severityOfGrade(grade) === 'severe');
  return isSevere ? 'severe reaction' : undefined;
}

export type ReactionToDecide = { readonly fact: Fact<'reaction'>; readonly as: string };

/** Those that hold and about which no prescriber has decided, in the order of their days. */
export function reactionsToDecide(record: SubjectRecord): readonly ReactionToDecide[] {
  const reactions = factsOf(record, 'reaction');
  if (reactions.length === 0) return [];
  const decisions = factsOf(record, 'prescriber-decision');
  return reactions.flatMap((fact) => {
    const as = holdsAs(fact.body);
    const isDecided = decisions.some(
      ({ body }) => body.question === 'severe reaction looked into' && body.about === fact.id,
    );
    return as === undefined || isDecided ? [] : [{ fact, as }];
  });
}
