/** Whose protocol, zone and date an act is judged by: the unit of the place where there is one, else the person's own. */
import { type Act, sessionOf, unitOfPatient, visitOn } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';

export async function unitOfAct(
  act: Act,
  { notes, units }: Pick<AtHand, 'notes' | 'units'>,
): Promise<UnitNow | undefined> {
  const ofSession = async (session: string): Promise<string | undefined> =>
    sessionOf(await notes.of('session', session))?.unit;
  const named = async (): Promise<string | undefined> => {
    switch (act.name) {
      case 'register':
        return act.referral.unit;
      case 'plan session':
        return act.body.unit;
      case 'cancel session':
      case 'close session':
      case 'accept handover':
      case 'book':
        return ofSession(act.session);
      case 'move':
        return ofSession(act.to);
      case 'receive packs':
      case 'count packs':
      case 'take out packs':
        return act.body.unit;
      case 'stop batch':
      case 'release batch':
        return (await units.all())[0]?.unit.id;
      case 'record competence':
      case 'open session':
      case 'set unit':
      case 'set formulary':
      case 'write protocol':
      case 'sign protocol':
        return act.unit;
      case 'note import':
      case 'settle row':
        return act.register;
      case 'take in': {
        const referral = act.lines.find(({ kind }) => kind === 'referral')?.body as
          | { readonly unit?: string }
          | undefined;
        return referral?.unit ?? unitOfPatient(await notes.of('patient', act.patient));
      }
      case 'record':
      case 'record together':
      case 'withdraw':
      case 'move entry':
      case 'may be one':
      case 'say one person':
      case 'confirm one person':
      case 'say two people':
      case 'read apart':
      case 'give up place':
      case 'decide':
      case 'second check':
      case 'start infusion':
      case 'pause infusion':
      case 'resume infusion':
      case 'finish infusion': {
        const record = await notes.of('patient', act.patient);
        const own = await units.named(unitOfPatient(record));
        // The visit of today is judged by the unit where the person is, also when another unit looks after them.
        const here = own === undefined ? undefined : visitOn(record, own.today)?.arrived.body.session;
        return (here === undefined ? undefined : await ofSession(here)) ?? own?.unit.id;
      }
    }
  };
  const unit = await named();
  return unit === undefined ? undefined : units.named(unit);
}
