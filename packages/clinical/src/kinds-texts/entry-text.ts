/** One readable line for each kind of entry: "creatinine 79 umol/L (sample of 9 Oct 2026)". The same line everywhere. */
import { toldText } from './told-ahead-text.ts';
import { scoresText } from './density-text.ts';
import { observationsText } from './observations-text.ts';
import { contactPersonText } from '../aftercare/contact-people.ts';
import { aftercareText } from './aftercare-text.ts';
import { reactionText } from './reaction-text.ts';
import { siteCheckText } from './site-check-text.ts';
import { day, shortDate } from '../calendar/day.ts';
import { partialDateText } from '../calendar/partial-date.ts';
import { quantityText } from '../exact/quantity.ts';
import type { KindName } from '../kinds/index.ts';
import type { Fact } from '../record/patient-record.ts';
import { callText } from './call-text.ts';
import { withOurUnit } from './converted-text.ts';
import { counted, plural } from './words.ts';

type Texts = { readonly [Kind in KindName]: (fact: Fact<Kind>) => string };

const date = (text: string): string => shortDate(day(text));
const and = (text: string | undefined): string => (text === undefined ? '' : `, ${text}`);
const because = (text: string | undefined): string => (text === undefined ? '' : `: ${text}`);

const texts: Texts = {
  identity: ({ body }) =>
    `${body.title === undefined ? '' : `${body.title} `}${body.given} ${body.family}, born ${partialDateText(body.born)}${and(body.sex)}, ${body.number}${body.formerNames === undefined ? '' : `, formerly ${plural(body.formerNames, 'and')}`}`,
  'same-person': ({ body }) => {
    switch (body.answer) {
      case 'may be one':
        return `may be the same person as in other notes: ${body.reason}`;
      case 'proposed':
        return `one person with other notes, says the first of two; ${plural(body.agree, 'and')} agree: ${body.reason}`;
      case 'one':
        return `one person with other notes, which are read together; ${plural(body.agree, 'and')} agree: ${body.reason}`;
      case 'two':
        return `not the same person as in other notes; ${plural(body.differ, 'and')} ${body.differ.length === 1 ? 'differs' : 'differ'}: ${body.reason}`;
    }
  },
  contact: ({ body }) => {
    const parts = [
      body.telephone,
      body.email,
      body.address,
      body.familyDoctor,
      body.dentist,
      body.remindBy === undefined ? undefined : `to be reminded by ${plural(body.remindBy, 'or')}`,
      body.language === undefined ? undefined : `speaks ${body.language}`,
      body.needs === undefined || body.needs.length === 0 ? undefined : `needs ${plural(body.needs, 'and')}`,
      body.armToAvoid === undefined ? undefined : `not the ${body.armToAvoid} arm${because(body.armToAvoidBecause)}`,
    ];
    return `contact: ${parts.filter((part) => part !== undefined).join(', ') || 'nothing given'}`;
  },
  referral: ({ body }) => `referred by ${body.from} (${body.tier}): ${body.reason}`,
  triage: ({ body }) =>
    body.outcome === 'accepted'
      ? `referral accepted${body.tier === undefined ? '' : `, ${body.tier}`}`
      : `referral returned: ${body.reason}`,
  result: ({ body, on }) =>
    `${body.analyte} ${withOurUnit(body.analyte, body.quantity)} (sample of ${shortDate(on)}${body.acuteAdmission === true ? ', acutely ill in hospital' : ''})`,
  'results-signed': ({ body }) => `${counted(body.results.length, 'result')} signed${because(body.note)}`,
  weight: ({ body }) => `weight ${withOurUnit('weight', body.quantity)}, ${body.method}${and(body.caution)}`,
  height: ({ body }) => `height ${withOurUnit('height', body.quantity)}, ${body.which}`,
  'vitamin-d-loading': ({ body }) =>
    `vitamin D loading prescribed: ${counted(body.doses, 'dose')} of ${body.unitsPerDose} IU, every ${counted(body.everyDays, 'day')}, from ${date(body.startOn)}`,
  'vitamin-d-taken': ({ body }) => `${counted(body.doses, 'loading dose')} of vitamin D taken (${body.source})`,
  'vitamin-d-loading-stopped': ({ body }) => `vitamin D loading stopped: ${body.reason}`,
  'vitamin-d-maintenance': ({ body }) => `daily vitamin D ${body.taken ? 'is' : 'is not'} taken${and(body.product)}`,
  dental: ({ body }) =>
    `teeth and jaw: ${body.answer}${body.checkedOn === undefined ? '' : `, checked ${date(body.checkedOn)}`}${because(body.note)}`,
  condition: ({ body }) => `${body.what}${because(body.note)}`,
  'secondary-causes': ({ body }) => `secondary causes: ${body.answer}${because(body.note)}`,
  illness: ({ body, on }) => `${body.sort} since ${shortDate(on)}: ${body.what}`,
  'well-since': ({ body, on }) => `well since ${shortDate(on)}, eating and drinking${because(body.note)}`,
  surgery: ({ body, on }) => `${body.what} on ${shortDate(on)}${because(body.note)}`,
  fracture: ({ body, on }) =>
    `${body.site} fracture${body.bone === undefined ? '' : ` (${body.bone})`}${body.dateKnown ? ` on ${shortDate(on)}` : ', day not known'}${and(body.treated)}${because(body.note)}`,
  'bone-density': ({ body, on }) =>
    `bone density ${body.site}${and(body.side)} ${quantityText(body.density)}${scoresText(body)} (${body.scanner}, ${shortDate(on)})`,
  'spine-imaging': ({ body, on }) =>
    `spine imaging of ${shortDate(on)} (${body.method}): ${body.found}${and(body.levels)}`,
  adherence: ({ body }) => `${body.medicine}: ${body.taken} taken (${body.source})${because(body.note)}`,
  symptom: ({ body }) => `${body.what}${because(body.note)}`,
  'symptom-cleared': ({ body }) =>
    `${body.question === undefined ? 'symptom' : `answer to "${body.question}"`} cleared: ${body.finding}`,
  allergy: ({ body }) =>
    body.answer === 'none known'
      ? 'no allergies known'
      : body.answer === 'bisphosphonate'
        ? `reacts to bisphosphonates: ${body.reaction}`
        : `allergic to ${body.substance}${body.medicine === undefined ? ', which medicine is not said' : ` (${body.medicine})`}${because(body.reaction)}`,
  pregnancy: ({ body }) =>
    body.answer === 'does not apply'
      ? `pregnancy does not apply: ${body.reason}`
      : `pregnancy and breast-feeding: ${body.answer}`,
  medicine: ({ body, on }) =>
    `${body.name}${and(body.dailyDose)}${body.prednisoloneMgPerDay === undefined ? '' : `, as prednisolone ${body.prednisoloneMgPerDay} mg a day`}, from ${shortDate(on)}${body.stoppedOn === undefined ? '' : `, stopped ${date(body.stoppedOn)}`}`,
  'baseline-risk': ({ body, on }) =>
    `risk of ${body.of} ${body.percent} %${body.lowPercent === undefined ? '' : ` (${body.lowPercent} to ${body.highPercent})`} over ${counted(body.years, 'year')}, worked out on ${shortDate(on)} by ${body.instrument}${body.veryFrail ? ', very frail' : ''}${because(body.note)}`,
  talk: ({ body }) =>
    `talked about ${plural(body.topics, 'and')}; ${body.teachBack === 'not asked' ? 'not asked to say it back' : body.teachBack}${body.matters === undefined ? '' : `; what matters: "${body.matters}"`}${body.present === undefined ? '' : `; with ${body.present}`}${body.leaflet === undefined ? '' : `; leaflet: ${body.leaflet}`}; card ${body.cardGiven ? 'given' : 'not given'}; decided: ${body.decision}${body.words === undefined ? '' : `, "${body.words}"`}${body.askAgainOn === undefined ? '' : `; ask again on ${date(body.askAgainOn)}`}`,
  capacity: ({ body }) =>
    body.answer === 'can decide this'
      ? `can decide this${because(body.helped)}`
      : `cannot decide this: ${body.because}; tried: ${body.tried}; may be able to later: ${body.mayReturn}`,
  consent: ({ body }) =>
    body.decision === 'given'
      ? `consent given, ${body.how}`
      : body.decision === 'best interest'
        ? `best-interest decision: ${body.basis}; consulted ${body.consulted}`
        : `consent not given${because(body.reason)}`,
  prescription: ({ body }) =>
    `prescribed ${body.regimen}, valid ${date(body.validFrom)} - ${date(body.validUntil)}${body.plannedDoses === undefined ? '' : `, ${counted(body.plannedDoses, 'dose')} before a review`}${body.interval === undefined ? '' : `, interval ${counted(body.interval.months, 'month')}: ${body.interval.reason}`}${orderedText(body)}${because(body.conditions)}`,
  'pharmacy-check': ({ body }) =>
    body.outcome === 'verified'
      ? `prescription verified by the pharmacist${because(body.note)}`
      : body.outcome === 'asked'
        ? `pharmacist asks the prescriber: ${body.question}`
        : `prescription refused by the pharmacist: ${body.reason}`,
  'pharmacy-answer': ({ body }) => `answer to the pharmacist: ${body.answer}`,
  'prescriber-exception': ({ body }) =>
    `prescriber's exception for ${body.requirement} until ${date(body.expiresOn)}: ${body.reason}`,
  'prescriber-decision': ({ body }) =>
    `prescriber decided: ${body.question}: ${body.reason}${body.pharmacist === undefined ? '' : `, with pharmacist ${body.pharmacist}`}`,
  dose: ({ body, on }) =>
    `${body.medicine} given on ${shortDate(on)}, ${body.setting}${body.batch === undefined ? '' : `, batch ${body.batch}`}${body.partMilliliters === undefined ? '' : `, part dose of ${body.partMilliliters} mL`}${body.minutes === undefined ? '' : `, over ${counted(body.minutes, 'minute')}`}${injectedText(body)}${homeCheckText(body)}${body.incident === undefined ? '' : `; incident: ${body.incident}`}${body.until === undefined ? '' : `, until ${date(body.until)}`}`,
  reaction: ({ body }) => reactionText(body),
  'contact-person': ({ body }) => `we speak to ${contactPersonText(body)}`,
  aftercare: ({ body }) => aftercareText(body),
  'recall-talk': ({ body }) => {
    const parts = [
      body.wants === undefined
        ? undefined
        : body.wants === 'yes'
          ? 'wants it'
          : body.wants === 'no'
            ? 'does not want it'
            : 'not sure about it',
      body.address === undefined ? undefined : `address ${body.address}`,
      body.bloods === undefined ? undefined : `bloods: ${body.bloods}`,
      body.note,
    ];
    return `before the next dose${body.toldBy === 'the person' ? '' : `, told by ${body.toldBy}`}: ${parts.filter((part) => part !== undefined).join('; ') || 'nothing asked'}`;
  },
  'red-flag-passed-on': ({ body }) =>
    `red flag passed on to ${body.to}: ${body.theyWill}; the person was told: ${body.personWasTold}`,
  'reaction-reported': ({ body }) =>
    `reaction ${body.to === 'not reported' ? 'not reported' : `reported to the ${body.to}`}${and(body.number)}${because(body.note)}`,
  'course-review': ({ body }) => {
    switch (body.outcome) {
      case 'carry on':
        return `review${decidedBy(body)}: carry on to ${counted(body.toDoses, 'dose')}: ${body.reason}`;
      case 'planned break':
        return `review${decidedBy(body)}: planned break until ${date(body.reviewOn)}${body.countedFrom === undefined ? '' : `, counted from ${date(body.countedFrom)}`}, sooner if ${body.triggers}: ${body.reason}`;
      case 'other treatment':
        return `review${decidedBy(body)}: other treatment, ${body.to}, due ${date(body.dueOn)}: ${body.reason}`;
      case 'stop':
        return `review${decidedBy(body)}: stop: ${body.reason}`;
      case 'new course':
        return `review${decidedBy(body)}: new course of ${counted(body.plannedDoses, 'dose')}: ${body.reason}`;
    }
  },
  call: ({ body }) =>
    `${body.route} about ${body.about}, ${body.reached ? 'reached' : 'not reached'}${because(body.note)}${body.callBackOn === undefined ? '' : `; again on ${date(body.callBackOn)}`}`,
  refusal: ({ body }) =>
    `said no to ${body.to}: "${body.words}"${body.askAgainOn === undefined ? '' : `; ask again on ${date(body.askAgainOn)}`}`,
  'cannot-be-reached': ({ body }) => `cannot be reached: ${body.tried}; look again on ${date(body.lookAgainOn)}`,
  'transfer-out': ({ body }) => `care goes to ${body.to}; chase on ${date(body.chaseOn)}`,
  'transfer-acknowledged': ({ body }) => `transfer acknowledged by ${body.by}`,
  died: ({ body, on }) => `died on ${shortDate(on)} (${body.source})`,
  closed: ({ body }) =>
    `closed: ${body.reason}${and(body.takenOverBy === undefined ? undefined : `what follows is given by ${body.takenOverBy}`)}${body.nothingFollows === undefined ? '' : `; nothing follows the medicine whose clock runs: ${body.nothingFollows}`}`,
  reopened: ({ body }) => `reopened: ${body.reason}`,
  'place-booked': ({ body }) =>
    `place booked: ${date(body.on)}, ${body.arriveAt}, place ${body.place}${body.accepted === undefined ? '' : `; took on ${plural(body.accepted.causes, 'and')}: ${body.accepted.reason}`}`,
  'place-given-up': ({ body }) => `place given up, asked by ${body.askedBy}: ${body.reason}`,
  arrived: ({ body }) =>
    `arrived; ${plural(body.identifiers, 'and')} matched${body.chair === undefined ? '' : `; chair ${body.chair}`}`,
  observations: ({ body }) => `observations ${body.when} the dose: ${observationsText(body)}`,
  checklist: ({ body }) =>
    `checklist: ${Object.entries(body.answers)
      .map(([id, { answer, note }]) => `${id.replaceAll('-', ' ')} ${answer}${note === undefined ? '' : ` (${note})`}`)
      .join(', ')}`,
  'go-decision': ({ body }) =>
    `${body.decision}${because(body.reasonCode)}${and(body.note)}${body.nextStep === undefined ? '' : `; next: ${body.nextStep}`}${body.nextBy === undefined ? '' : `, by ${shortDate(day(body.nextBy))}`}${body.nextOwner === undefined ? '' : ` (${body.nextOwner})`}${body.tellsThePatient === undefined ? '' : `; told by: ${body.tellsThePatient}`}${body.couldHaveBeenSeen === undefined ? '' : `; could have been seen: ${body.couldHaveBeenSeen}`} (then: ${body.basis.verdict})`,
  cannula: ({ body }) =>
    `cannula ${body.gauge} G, ${body.site}, ${counted(body.tries, 'try', 'tries')}, ${body.placed ? 'in place' : 'not placed'}${body.armToAvoidUsedBecause === undefined ? '' : `; in the arm to avoid: ${body.armToAvoidUsedBecause}`}`,
  flush: ({ body }) =>
    `flush ${body.when} the dose, ${body.milliliters} mL, ${body.ranFreely ? 'ran freely' : 'did not run freely'}${body.calciumInLine === undefined ? '' : body.calciumInLine ? '; something with calcium is in the line' : '; nothing with calcium in the line'}`,
  preparation: ({ body }) =>
    `prepared ${body.product}, batch ${body.batch}, use by ${date(body.expiresOn)}, ${body.minutes === undefined ? 'to inject' : `over ${counted(body.minutes, 'minute')}`}${packReadBy(body)}`,
  'second-check': ({ body }) =>
    `independent second check${body.signedOnPaperBy === undefined ? '' : ', signed on the day sheet and typed in'}: ${
      body.agrees ? 'the readings agree' : `the readings differ in ${plural(body.differs, 'and')}`
    }`,
  'infusion-started': ({ body }) =>
    `infusion started, planned ${counted(body.plannedMinutes, 'minute')}${body.identifiers === undefined ? '' : `; ${plural(body.identifiers, 'and')} matched at the chair`}${body.alongTheLine === undefined ? '' : `; along the line: ${body.alongTheLine}`}${body.packAgain === undefined ? '' : `; pack read once more: ${body.packAgain.product}, batch ending ${body.packAgain.batchLastFour}`}`,
  'infusion-paused': ({ body }) => `infusion paused: ${body.reason}`,
  'infusion-resumed': ({ body }) =>
    `infusion resumed${body.alongTheLine === undefined ? '' : `; along the line: ${body.alongTheLine}`}`,
  'infusion-finished': ({ body }) =>
    `infusion finished, ${body.milliliters} mL${body.ranSeconds === undefined ? ', running time not measured' : ` in ${Math.floor(body.ranSeconds / 60)} min ${body.ranSeconds % 60} s`}${body.timedBy === undefined ? '' : `, timed by ${body.timedBy}`}${body.pausedMinutes === undefined ? '' : `, stood still ${counted(body.pausedMinutes, 'minute')}`}${body.stoppedBecause === undefined ? '' : `; stopped: ${body.stoppedBecause}`}`,
  'site-check': ({ body }) => siteCheckText(body),
  'cannula-removed': ({ body }) => `cannula removed, site ${body.site}`,
  observed: ({ body }) =>
    `watched for ${counted(body.minutes, 'minute')}, ${body.well ? 'well' : 'not well'}${because(body.note)}`,
  left: ({ body }) =>
    `left${body.leaves === undefined ? '' : `, ${body.leaves}`}, card ${body.cardGiven ? 'given' : 'not given'}${because(body.note)}`,
  'letter-drafted': ({ body }) => `letter to the ${body.to} about ${body.about} drafted`,
  letter: ({ body }) =>
    `letter to the ${body.to} about ${body.about}${body.chaseOn === undefined ? '' : `; ask for the answer on ${date(body.chaseOn)}`}`,
  'letter-sent': ({ body }) => `letter sent, ${body.by}${because(body.note)}`,
  'letter-answered': ({ body }) =>
    body.outcome === 'asked again'
      ? `letter not answered, asked again; look on ${date(body.chaseOn)}${because(body.words)}`
      : `letter ${body.outcome}: ${body.words}`,
  'message-begun': ({ body }) =>
    `reminder by ${body.channel} to ${body.to}, ${counted(body.daysBefore, 'day')} before${body.approval === undefined ? '' : ', by itself as approved'}: ${body.text}`,
  'message-ended': ({ body }) =>
    body.outcome === 'accepted' ? 'message taken by the channel' : `message ${body.outcome}: ${body.because}`,
  'page-sent': ({ body }) => `address of the own page sent by ${body.channel} to ${body.to}`,
  'reminders-plan': ({ body }) =>
    body.is === 'stopped'
      ? `reminders no longer by themselves: ${body.reason}`
      : `reminders may go by themselves, ${plural(body.daysBefore.map(String), 'and')} days before, by ${body.channel} to ${body.to}`,
  'own-page': ({ body }) =>
    body.is === 'closed'
      ? `own page closed: ${body.reason}`
      : `own page handed over; it opens until ${date(body.expiresOn)}`,
  'told-ahead': ({ body }) => `told us before the visit, ${body.how}: ${toldText(body)}`,
  'patient-pack': ({ body }) =>
    `patient pack given: ${plural(body.parts, 'and')}, ${body.size} print, ${body.language}, ${body.wording}`,
  withdrawal: ({ body }) =>
    `withdrawn${body.movedTo === undefined ? '' : ' and moved to other notes'}: ${body.reason}${body.usedBy === undefined || body.usedBy.length === 0 ? '' : `; ${counted(body.usedBy.length, 'decision')} made while it stood to be looked at again`}`,
  'moved-here': ({ body }) => `moved here from other notes: ${body.reason}`,
  'not-taken-in': ({ body }) => `written without network and not taken in: ${body.what}; because ${body.because}`,
  'sent-all-the-same': ({ body }) =>
    `written without network and sent all the same: ${body.what}; against it stood: ${body.against}; because ${body.because}`,
  'looked-again': ({ body }) => `looked at again: ${body.finding}`,
  'session-planned': ({ body }) =>
    `session on ${date(body.on)}, ${body.opensAt}-${body.closesAt}, ${counted(body.arriveAt.length, 'place')}`,
  'session-place-taken': ({ body }) => `place ${body.place} taken`,
  'session-place-released': ({ body }) => `place ${body.place} free again: ${body.reason}`,
  'session-cancelled': ({ body }) => `session cancelled: ${body.reason}`,
  'session-opened': ({ body }) =>
    `session opened: ${counted(body.present.length, 'person', 'people')} here, ${counted(body.secondCheckers.length, 'second checker')}, kit ${body.kit.complete ? 'whole and' : 'not whole,'} in date until ${date(body.kit.expiresOn)}, ${counted(body.chairs, 'chair')}${and(countsText(body.counts))}${and(body.note)}`,
  'session-closed': ({ body }) => `session closed${and(countsText(body.counts))}; handed over: ${body.handover}`,
  'handover-accepted': ({ body }) => `handover accepted${because(body.note)}`,
  'support-booking': ({ body }) =>
    body.answer === 'cancelled'
      ? `booking cancelled with ${body.toldWhom}`
      : body.answer === 'not needed'
        ? `${body.what} not needed this time: ${body.reason}`
        : `${body.what} ${body.inPlaceOf === undefined ? 'booked with' : 'moved: with'} ${body.bookedWith} for ${date(body.on)}${body.at === undefined ? '' : ` at ${body.at}`}${and(body.reference)}`,
  'advice-call': ({ body }) => `advice line, ${callText(body)}`,
  'advice-answered': ({ body }) =>
    `advice-line call answered${body.inPlaceOf === undefined ? '' : ` in place of ${body.inPlaceOf}`}: ${body.outcome}`,
  'unknown-call': ({ body }) => `advice line, about "${body.nameSaid}"${and(body.knownOfThem)}, ${callText(body)}`,
  'unknown-call-settled': ({ body }) =>
    `call ${body.patient === undefined ? 'about nobody of ours' : 'found its person'}: ${body.outcome}`,
  'named-nurse': () => 'named nurse of a person on the list',
  competence: ({ body }) => `${body.what}: shown as ${body.role}, counts until ${date(body.until)}`,
  'unit-settings': ({ body }) => `${body.name}: ${counted(body.chairs, 'chair')}, ${body.opensAt}-${body.closesAt}`,
  formulary: ({ body }) =>
    `packs the unit uses: ${plural(
      body.packs.map(({ productNumber, product }) => `${product} (${productNumber})`),
      'and',
    )}`,
  'group-direction': ({ body }) =>
    `group direction ${body.name}, version ${body.version}, for ${body.regimen}, ${date(body.validFrom)} to ${date(body.validUntil)}; ${counted(body.mayGive.length, 'nurse')} named`,
  'group-direction-signed': () => 'group direction signed by a pharmacist',
  'group-direction-ended': ({ body }) => `group direction ended: ${body.reason}`,
  'dose-held': ({ body }) =>
    body.takenFrom === undefined
      ? `the drip is looked after at ${body.device.name}`
      : `the drip was taken over at ${body.device.name} from ${body.takenFrom.name}`,
  'packs-ordered': ({ body }) =>
    `${counted(body.packs, 'pack')} of ${body.product} ordered, expected on ${date(body.expectedOn)}${body.from === undefined ? '' : `, from ${body.from}`}${body.reference === undefined ? '' : `, order ${body.reference}`}`,
  'packs-order-closed': ({ body }) => `order closed: ${body.reason}`,
  'batch-stopped': ({ body }) =>
    `batch ${body.batch} stopped, ${body.why}${body.actWithin === undefined ? '' : ` (act ${body.actWithin === 'at once' ? 'at once' : `within ${body.actWithin}`})`}: ${body.reason}${body.toldBy === undefined ? '' : `; ${body.toldBy}`}`,
  'batch-released': ({ body }) => `batch ${body.batch} may be used again: ${body.reason}`,
  'batch-received': ({ body }) =>
    `${counted(body.packs, 'pack')} of ${body.product} received, batch ${body.batch}, use by ${date(body.expiresOn)}${body.from === undefined ? '' : `, from ${body.from}`}`,
  'batch-counted': ({ body }) => `${counted(body.packs, 'pack')} of batch ${body.batch} counted${because(body.note)}`,
  'batch-taken-out': ({ body }) =>
    `${counted(body.packs, 'pack')} of batch ${body.batch} taken out, ${body.why}${because(body.note)}`,
  'told-of-batch': ({ body }) => `told about batch ${body.batch}, ${body.how}${because(body.note)}`,
  'pack-opened': ({ body }) => `pack ${body.serial} of ${body.productNumber}, batch ${body.batch}, opened`,
  'protocol-written': ({ body }) => `protocol ${body.version} written`,
  'protocol-signed': ({ body }) =>
    `protocol ${body.version} signed as ${body.as}, in force from ${date(body.inForceFrom)}`,
  'import-run': ({ body }) =>
    `file ${body.file} brought in: ${body.taken} of ${counted(body.rows, 'row')} taken in, ${body.waiting} waiting, ${body.known} known before`,
  'row-waiting': ({ body }) => `row ${body.row} waits: ${body.problems.map(({ says }) => says).join('; ')}`,
  'row-settled': ({ body }) => `row ${body.row} ${body.outcome}${because(body.reason)}`,
};

const countsText = (counts: Fact<'session-opened'>['body']['counts']): string | undefined =>
  counts.length === 0
    ? undefined
    : plural(
        counts.map(({ batch, packs, note }) => `${counted(packs, 'pack')} of ${batch}${because(note)}`),
        'and',
      );

/** How the preparer read the pack: a typed reading is marked wherever it is read. */
const orderedText = ({ orderedAs, groupDirection }: Fact<'prescription'>['body']): string =>
  orderedAs === undefined ? '' : `, ${orderedAs}${groupDirection === undefined ? '' : ` (${groupDirection})`}`;

/** Who checked it is told beside: an entry names people by their sign, not in words. */
const homeCheckText = ({ checkedWhen, homeRule }: Fact<'dose'>['body']): string =>
  checkedWhen === undefined
    ? ''
    : `; checked by another ${checkedWhen}${homeRule === undefined ? '' : ` (protocol ${homeRule.protocolVersion}: alone ${homeRule.oneAlone})`}`;

const injectedText = ({ injectedInto, injections }: Fact<'dose'>['body']): string =>
  injectedInto === undefined
    ? ''
    : `, ${injections === undefined ? '' : `${counted(injections, 'injection')} `}into the ${injectedInto}`;

const packReadBy = ({ scan, typedBecause }: Fact<'preparation'>['body']): string =>
  scan === undefined
    ? `; typed, not scanned${because(typedBecause)}`
    : `; scanned${scan.serial === undefined ? ', no serial in the code' : `, serial ${scan.serial}`}`;

/** ", decided by a specialist (Dr Aldo Finch)" */
const decidedBy = ({ capacity, decidedBy: who }: Fact<'course-review'>['body']): string =>
  capacity === undefined && who === undefined
    ? ''
    : ` by ${capacity === 'specialist' ? 'a specialist' : capacity === undefined ? who : 'another prescriber'}${capacity === undefined || who === undefined ? '' : ` (${who})`}`;

export const entryText = (fact: Fact): string => (texts[fact.kind] as (fact: Fact) => string)(fact);
