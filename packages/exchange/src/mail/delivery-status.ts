/**
 * What a mail server sends back about a message (RFC 3464, delivery status notifications, in a multipart/report of RFC 6522): of
 * which message it speaks, what became of it for each recipient, and why. Anything else is not read: undefined, never a guess.
 */

export const deliveryActions = ['failed', 'delayed', 'delivered', 'relayed', 'expanded'] as const;
export type DeliveryAction = (typeof deliveryActions)[number];

export type Delivery = {
  readonly action: DeliveryAction;
  /** Addresses it was for, lower case: the original one and the one it ended at. */
  readonly recipients: readonly string[];
  /** "5.0.0: 550 user unknown" */
  readonly because: string;
};

export type DeliveryStatus = {
  /** Message-ID of the returned message and the envelope's id, without angle brackets. */
  readonly messages: readonly string[];
  readonly deliveries: readonly Delivery[];
};

export function readDeliveryStatus(text: string): DeliveryStatus | undefined {
  const report = partOf(text.replaceAll('\r\n', '\n'));
  const boundary = boundaryOf(report.fields.get('content-type') ?? '');
  if (boundary === undefined) return undefined;
  const parts = partsBetween(report.rest, boundary).map(partOf);
  const status = parts.find(({ fields }) =>
    /^message\/(global-)?delivery-status\b/i.test(fields.get('content-type') ?? ''),
  );
  if (status === undefined) return undefined;
  const [message, ...recipients] = groupsOf(status.rest);
  const deliveries = recipients.map(deliveryIn);
  if (message === undefined || deliveries.length === 0 || !deliveries.every((one) => one !== undefined))
    return undefined;
  const returned = parts
    .slice(parts.indexOf(status) + 1)
    .map(({ fields, rest }) =>
      /^text\/rfc822-headers/i.test(fields.get('content-type') ?? '')
        ? fieldsIn(rest)
        : partOf(rest.trimStart()).fields,
    );
  const ids = [message.get('original-envelope-id'), ...returned.map((fields) => fields.get('message-id'))];
  return { messages: ids.flatMap((id) => (id === undefined ? [] : [bare(id)])), deliveries };
}

type Fields = ReadonlyMap<string, string>;

/** A header folded over several lines is one; names are told without regard to case (RFC 5322). */
function fieldsIn(head: string): Fields {
  const fields = new Map<string, string>();
  for (const line of head.replaceAll(/\n[ \t]+/g, ' ').split('\n')) {
    const [, name, value] = /^([!-9;-~]+):[ \t]*(.*)$/.exec(line) ?? [];
    if (name !== undefined && value !== undefined && !fields.has(name.toLowerCase()))
      fields.set(name.toLowerCase(), value.trim());
  }
  return fields;
}

function partOf(text: string): { readonly fields: Fields; readonly rest: string } {
  const end = text.startsWith('\n') ? 0 : text.indexOf('\n\n');
  return end === -1
    ? { fields: fieldsIn(text), rest: '' }
    : { fields: fieldsIn(text.slice(0, end)), rest: text.slice(text.startsWith('\n') ? 1 : end + 2) };
}

function boundaryOf(contentType: string): string | undefined {
  if (!/^multipart\/report\b/i.test(contentType)) return undefined;
  const [, quoted, plain] = /;\s*boundary\s*=\s*(?:"([^"]+)"|([^\s;]+))/i.exec(contentType) ?? [];
  return quoted ?? plain;
}

/** What stands between the boundary's lines; before the first and after the last nothing counts. */
function partsBetween(text: string, boundary: string): readonly string[] {
  const parts: string[] = [];
  let lines: string[] | undefined;
  for (const line of text.split('\n')) {
    const bared = line.trimEnd();
    if (bared !== `--${boundary}` && bared !== `--${boundary}--`) lines?.push(line);
    else {
      if (lines !== undefined) parts.push(lines.join('\n'));
      lines = bared.endsWith('--') && bared !== `--${boundary}` ? undefined : [];
    }
  }
  return parts;
}

/** Fields of the message and of each recipient, a blank line between. */
const groupsOf = (text: string): readonly Fields[] =>
  text
    .split(/\n[ \t]*\n/)
    .map(fieldsIn)
    .filter(({ size }) => size > 0);

function deliveryIn(fields: Fields): Delivery | undefined {
  const action = deliveryActions.find((one) => one === fields.get('action')?.toLowerCase());
  const recipients = [fields.get('original-recipient'), fields.get('final-recipient')].flatMap(
    (field) => addressIn(field) ?? [],
  );
  if (action === undefined || recipients.length === 0) return undefined;
  const said = fields.get('diagnostic-code')?.replace(/^[\w-]+\s*;\s*/, '');
  const status = fields.get('status') ?? '';
  return {
    action,
    recipients: [...new Set(recipients)],
    because: [status, said].filter((part) => part !== undefined && part !== '').join(': ') || action,
  };
}

/** "rfc822; W@mail.example": the address, whatever its type. */
function addressIn(field: string | undefined): string | undefined {
  const address = bare(field?.replace(/^[^;]*;/, '') ?? '').toLowerCase();
  return address === '' ? undefined : address;
}

const bare = (text: string): string => text.trim().replace(/^<|>$/g, '');
