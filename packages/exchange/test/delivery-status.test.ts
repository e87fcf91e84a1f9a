/**
 * Reports about mail read as RFC 3464 gives them: its Appendix E (E.1 simple, E.2 several recipients, E.3 from a gateway, E.4
 * delayed), with the field values printed there; the multipart around them is RFC 6522.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readDeliveryStatus } from '@twelvemonth/exchange';

const report = (
  status: string,
  returned = 'content-type: message/rfc822\n\n[original message goes here]',
  boundary = 'RAA14128.773615765/CS.UTK.EDU',
) =>
  `Date: Thu, 7 Jul 1994 17:16:05 -0400
From: Mail Delivery Subsystem <MAILER-DAEMON@CS.UTK.EDU>
Message-Id: <199407072116.RAA14128@CS.UTK.EDU>
Subject: Returned mail: Cannot send message for 5 days
To: <owner-info-mime@cs.utk.edu>
MIME-Version: 1.0
Content-Type: multipart/report; report-type=delivery-status;
      boundary="${boundary}"

--${boundary}

The original message was received at Sat, 2 Jul 1994 17:10:28 -0400
--${boundary}
content-type: message/delivery-status

${status}
--${boundary}
${returned}
--${boundary}--
`;

describe('Appendix E', () => {
  test('E.1: a simple one', () => {
    const read = readDeliveryStatus(
      report(`Reporting-MTA: dns; cs.utk.edu

Original-Recipient: rfc822;louisl@larry.slip.umd.edu
Final-Recipient: rfc822;louisl@larry.slip.umd.edu
Action: failed
Status: 4.0.0
Diagnostic-Code: smtp; 426 connection timed out
Last-Attempt-Date: Thu, 7 Jul 1994 17:15:49 -0400
`),
    );
    expect(read).toEqual({
      messages: [],
      deliveries: [
        { action: 'failed', recipients: ['louisl@larry.slip.umd.edu'], because: '4.0.0: 426 connection timed out' },
      ],
    });
  });
  test('E.2: several recipients, each by itself', () => {
    const read = readDeliveryStatus(
      report(`Reporting-MTA: dns; cs.utk.edu

Original-Recipient: rfc822;arathib@vnet.ibm.com
Final-Recipient: rfc822;arathib@vnet.ibm.com
Action: failed
Status: 5.0.0 (permanent failure)
Diagnostic-Code: smtp;  550 'arathib@vnet.IBM.COM' is not a
 registered gateway user
Remote-MTA: dns; vnet.ibm.com

Original-Recipient: rfc822;johnh@hpnjld.njd.hp.com
Final-Recipient: rfc822;johnh@hpnjld.njd.hp.com
Action: delayed
Status: 4.0.0 (hpnjld.njd.jp.com: host name lookup failure)

Original-Recipient: rfc822;wsnell@sdcc13.ucsd.edu
Final-Recipient: rfc822;wsnell@sdcc13.ucsd.edu
Action: failed
Status: 5.0.0
Diagnostic-Code: smtp; 550 user unknown
Remote-MTA: dns; sdcc13.ucsd.edu
`),
    );
    expect(read?.deliveries.map(({ action, recipients, because }) => [action, ...recipients, because])).toEqual([
      [
        'failed',
        'arathib@vnet.ibm.com',
        "5.0.0 (permanent failure): 550 'arathib@vnet.IBM.COM' is not a registered gateway user",
      ],
      ['delayed', 'johnh@hpnjld.njd.hp.com', '4.0.0 (hpnjld.njd.jp.com: host name lookup failure)'],
      ['failed', 'wsnell@sdcc13.ucsd.edu', '5.0.0: 550 user unknown'],
    ]);
  });
  test('E.3: from a gateway to another sort of mail', () => {
    const read = readDeliveryStatus(
      report(`Reporting-MTA: mailbus; SYS30

Final-Recipient: unknown; nair_s
Status: 5.0.0 (unknown permanent failure)
Action: failed
`),
    );
    expect(read?.deliveries).toEqual([
      { action: 'failed', recipients: ['nair_s'], because: '5.0.0 (unknown permanent failure)' },
    ]);
  });
  test('E.4: delayed, nothing returned', () => {
    const read = readDeliveryStatus(
      report(
        `Reporting-MTA: dns; sun2.nsfnet-relay.ac.uk

Final-Recipient: rfc822;thomas@de-montfort.ac.uk
Status: 4.0.0 (unknown temporary failure)
Action: delayed
`,
        '',
        'foobar',
      ),
    );
    expect(read?.deliveries).toEqual([
      { action: 'delayed', recipients: ['thomas@de-montfort.ac.uk'], because: '4.0.0 (unknown temporary failure)' },
    ]);
  });
});

const failed =
  'Reporting-MTA: dns; a\nOriginal-Envelope-Id: e13\n\nFinal-Recipient: rfc822;W@Mail.Example\nAction: failed\nStatus: 5.1.1\n';

describe('of which message it speaks', () => {
  test.each([
    [
      'the whole returned message',
      'Content-Type: message/rfc822\n\nTo: w@mail.example\nMessage-ID: <e13@twelvemonth>\n\nwords',
    ],
    ['its headers alone', 'Content-Type: text/rfc822-headers\n\nTo: w@mail.example\nMessage-ID:\n <e13@twelvemonth>'],
  ])('%s', (_, returned) => {
    for (const text of [report(failed, returned), report(failed, returned).replaceAll('\n', '\r\n')])
      expect(readDeliveryStatus(text)).toEqual({
        messages: ['e13', 'e13@twelvemonth'],
        deliveries: [{ action: 'failed', recipients: ['w@mail.example'], because: '5.1.1' }],
      });
  });
});

describe('what is no such report is not read', () => {
  test.each([
    ['an ordinary answer', 'Subject: Re: your place\n\nThank you, I shall come.'],
    ['another sort of report', report(failed).replace('message/delivery-status', 'message/disposition-notification')],
    ['one without an action', report(failed.replace('Action: failed\n', ''))],
    ['one with an action of no such name', report(failed.replace('failed', 'lost'))],
    ['one without a recipient', report('Reporting-MTA: dns; a\n')],
    ['nothing', ''],
  ])('%s', (_, text) => expect(readDeliveryStatus(text)).toBeUndefined());
  test('whatever it is handed, it answers', () => {
    fc.assert(
      fc.property(fc.string(), fc.nat(2000), (noise, at) => {
        const whole = report(failed);
        for (const text of [noise, whole.slice(0, at) + noise + whole.slice(at), whole.slice(at)]) {
          const read = readDeliveryStatus(text);
          expect(read === undefined || read.deliveries.length > 0).toBe(true);
        }
      }),
    );
  });
});
