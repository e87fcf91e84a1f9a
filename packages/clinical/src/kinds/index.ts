/** Every kind of entry there is, by name. */
import { identity } from './identity.ts';
import { samePerson } from './same-person.ts';
import { contact } from './contact.ts';
import { referral } from './referral.ts';
import { triage } from './triage.ts';
import { result } from './result.ts';
import { resultsSigned } from './results-signed.ts';
import { weight } from './weight.ts';
import { height } from './height.ts';
import { vitaminDLoading } from './vitamin-d-loading.ts';
import { vitaminDTaken } from './vitamin-d-taken.ts';
import { vitaminDLoadingStopped } from './vitamin-d-loading-stopped.ts';
import { vitaminDMaintenance } from './vitamin-d-maintenance.ts';
import { dental } from './dental.ts';
import { condition } from './condition.ts';
import { secondaryCauses } from './secondary-causes.ts';
import { illness } from './illness.ts';
import { wellSince } from './well-since.ts';
import { surgery } from './surgery.ts';
import { fracture } from './fracture.ts';
import { boneDensity } from './bone-density.ts';
import { spineImaging } from './spine-imaging.ts';
import { adherence } from './adherence.ts';
import { symptom } from './symptom.ts';
import { symptomCleared } from './symptom-cleared.ts';
import { allergy } from './allergy.ts';
import { pregnancy } from './pregnancy.ts';
import { medicine } from './medicine.ts';
import { consent } from './consent.ts';
import { capacity } from './capacity.ts';
import { baselineRisk } from './baseline-risk.ts';
import { talk } from './talk.ts';
import { packsOrdered } from './packs-ordered.ts';
import { packsOrderClosed } from './packs-order-closed.ts';
import { doseHeld } from './dose-held.ts';
import { prescription } from './prescription.ts';
import { pharmacyCheck } from './pharmacy-check.ts';
import { pharmacyAnswer } from './pharmacy-answer.ts';
import { prescriberException } from './prescriber-exception.ts';
import { prescriberDecision } from './prescriber-decision.ts';
import { dose } from './dose.ts';
import { reaction } from './reaction.ts';
import { courseReview } from './course-review.ts';
import { contactPerson } from './contact-person.ts';
import { aftercare } from './aftercare.ts';
import { recallTalk } from './recall-talk.ts';
import { redFlagPassedOn } from './red-flag-passed-on.ts';
import { reactionReported } from './reaction-reported.ts';
import { call } from './call.ts';
import { refusal } from './refusal.ts';
import { cannotBeReached } from './cannot-be-reached.ts';
import { transferOut } from './transfer-out.ts';
import { transferAcknowledged } from './transfer-acknowledged.ts';
import { died } from './died.ts';
import { closed } from './closed.ts';
import { reopened } from './reopened.ts';
import { placeBooked } from './place-booked.ts';
import { supportBooking } from './support-booking.ts';
import { placeGivenUp } from './place-given-up.ts';
import { arrived } from './arrived.ts';
import { observations } from './observations.ts';
import { checklist } from './checklist.ts';
import { goDecision } from './go-decision.ts';
import { cannula } from './cannula.ts';
import { flush } from './flush.ts';
import { preparation } from './preparation.ts';
import { secondCheck } from './second-check.ts';
import { infusionStarted } from './infusion-started.ts';
import { infusionPaused } from './infusion-paused.ts';
import { infusionResumed } from './infusion-resumed.ts';
import { infusionFinished } from './infusion-finished.ts';
import { siteCheck } from './site-check.ts';
import { cannulaRemoved } from './cannula-removed.ts';
import { observed } from './observed.ts';
import { left } from './left.ts';
import { letter } from './letter.ts';
import { letterAnswered } from './letter-answered.ts';
import { letterDrafted } from './letter-drafted.ts';
import { letterSent } from './letter-sent.ts';
import { messageBegun } from './message-begun.ts';
import { messageEnded } from './message-ended.ts';
import { ownPage } from './own-page.ts';
import { pageSent } from './page-sent.ts';
import { remindersPlan } from './reminders-plan.ts';
import { toldAhead } from './told-ahead.ts';
import { patientPack } from './patient-pack.ts';
import { withdrawal } from './withdrawal.ts';
import { movedHere } from './moved-here.ts';
import { lookedAgain } from './looked-again.ts';
import { sentAllTheSame } from './sent-all-the-same.ts';
import { notTakenIn } from './not-taken-in.ts';
import { sessionPlanned } from './session-planned.ts';
import { sessionPlaceTaken } from './session-place-taken.ts';
import { sessionPlaceReleased } from './session-place-released.ts';
import { sessionCancelled } from './session-cancelled.ts';
import { sessionOpened } from './session-opened.ts';
import { sessionClosed } from './session-closed.ts';
import { handoverAccepted } from './handover-accepted.ts';
import { namedNurse } from './named-nurse.ts';
import { adviceCall } from './advice-call.ts';
import { adviceAnswered } from './advice-answered.ts';
import { unknownCall } from './unknown-call.ts';
import { unknownCallSettled } from './unknown-call-settled.ts';
import { competence } from './competence.ts';
import { unitSettings } from './unit-settings.ts';
import { formulary } from './formulary.ts';
import { groupDirection } from './group-direction.ts';
import { groupDirectionEnded } from './group-direction-ended.ts';
import { groupDirectionSigned } from './group-direction-signed.ts';
import { batchStopped } from './batch-stopped.ts';
import { batchReleased } from './batch-released.ts';
import { batchReceived } from './batch-received.ts';
import { batchCounted } from './batch-counted.ts';
import { batchTakenOut } from './batch-taken-out.ts';
import { toldOfBatch } from './told-of-batch.ts';
import { packOpened } from './pack-opened.ts';
import { protocolWritten } from './protocol-written.ts';
import { protocolSigned } from './protocol-signed.ts';
import { importRun } from './import-run.ts';
import { rowWaiting } from './row-waiting.ts';
import { rowSettled } from './row-settled.ts';
import type { BodyOf, EntryKind, EntryOf } from './entry-kind.ts';

export const entryKinds = {
  identity: identity,
  'same-person': samePerson,
  contact: contact,
  'contact-person': contactPerson,
  referral: referral,
  triage: triage,
  result: result,
  'results-signed': resultsSigned,
  weight: weight,
  height: height,
  'vitamin-d-loading': vitaminDLoading,
  'vitamin-d-taken': vitaminDTaken,
  'vitamin-d-loading-stopped': vitaminDLoadingStopped,
  'vitamin-d-maintenance': vitaminDMaintenance,
  dental: dental,
  condition: condition,
  'secondary-causes': secondaryCauses,
  illness: illness,
  'well-since': wellSince,
  surgery: surgery,
  fracture: fracture,
  'bone-density': boneDensity,
  'spine-imaging': spineImaging,
  adherence: adherence,
  symptom: symptom,
  'symptom-cleared': symptomCleared,
  allergy: allergy,
  pregnancy: pregnancy,
  medicine: medicine,
  'baseline-risk': baselineRisk,
  talk: talk,
  capacity: capacity,
  consent: consent,
  prescription: prescription,
  'pharmacy-check': pharmacyCheck,
  'pharmacy-answer': pharmacyAnswer,
  'prescriber-exception': prescriberException,
  'prescriber-decision': prescriberDecision,
  dose: dose,
  reaction: reaction,
  aftercare: aftercare,
  'recall-talk': recallTalk,
  'red-flag-passed-on': redFlagPassedOn,
  'reaction-reported': reactionReported,
  'course-review': courseReview,
  call: call,
  'advice-call': adviceCall,
  'advice-answered': adviceAnswered,
  refusal: refusal,
  'cannot-be-reached': cannotBeReached,
  'transfer-out': transferOut,
  'transfer-acknowledged': transferAcknowledged,
  died: died,
  closed: closed,
  reopened: reopened,
  'place-booked': placeBooked,
  'place-given-up': placeGivenUp,
  'support-booking': supportBooking,
  arrived: arrived,
  observations: observations,
  checklist: checklist,
  'go-decision': goDecision,
  cannula: cannula,
  flush: flush,
  preparation: preparation,
  'second-check': secondCheck,
  'infusion-started': infusionStarted,
  'dose-held': doseHeld,
  'infusion-paused': infusionPaused,
  'infusion-resumed': infusionResumed,
  'infusion-finished': infusionFinished,
  'site-check': siteCheck,
  'cannula-removed': cannulaRemoved,
  observed: observed,
  left: left,
  'letter-drafted': letterDrafted,
  letter: letter,
  'letter-sent': letterSent,
  'letter-answered': letterAnswered,
  'message-begun': messageBegun,
  'message-ended': messageEnded,
  'own-page': ownPage,
  'page-sent': pageSent,
  'reminders-plan': remindersPlan,
  'told-ahead': toldAhead,
  'patient-pack': patientPack,
  withdrawal: withdrawal,
  'moved-here': movedHere,
  'looked-again': lookedAgain,
  'not-taken-in': notTakenIn,
  'sent-all-the-same': sentAllTheSame,
  'session-planned': sessionPlanned,
  'session-place-taken': sessionPlaceTaken,
  'session-place-released': sessionPlaceReleased,
  'session-cancelled': sessionCancelled,
  'session-opened': sessionOpened,
  'session-closed': sessionClosed,
  'handover-accepted': handoverAccepted,
  'named-nurse': namedNurse,
  'unknown-call': unknownCall,
  'unknown-call-settled': unknownCallSettled,
  competence: competence,
  'unit-settings': unitSettings,
  formulary: formulary,
  'group-direction': groupDirection,
  'group-direction-signed': groupDirectionSigned,
  'group-direction-ended': groupDirectionEnded,
  'packs-ordered': packsOrdered,
  'packs-order-closed': packsOrderClosed,
  'batch-stopped': batchStopped,
  'batch-released': batchReleased,
  'batch-received': batchReceived,
  'batch-counted': batchCounted,
  'batch-taken-out': batchTakenOut,
  'pack-opened': packOpened,
  'told-of-batch': toldOfBatch,
  'protocol-written': protocolWritten,
  'protocol-signed': protocolSigned,
  'import-run': importRun,
  'row-waiting': rowWaiting,
  'row-settled': rowSettled,
} as const;

export type KindName = keyof typeof entryKinds;
export type BodyOfKind<Name extends KindName> = BodyOf<(typeof entryKinds)[Name]>;
/** Any entry whose body has been parsed, told apart by its kind. */
export type KnownEntry = { [Name in KindName]: EntryOf<(typeof entryKinds)[Name]> }[KindName];
export const kindNames = Object.keys(entryKinds) as KindName[];
export const isKindName = (name: string): name is KindName => Object.hasOwn(entryKinds, name);
export const kindNamed = (name: KindName): EntryKind => entryKinds[name];
