/**
 * Limits of the incidence beside competing ends, against what R prints: R 4.2.2, package survival 3.5-3 (LGPL), run once with
 *
 *   show <- function(fit, times) { s <- summary(fit, times = times); for (i in seq_along(s$time)) for (j in 2:length(fit$states))
 *     cat(sprintf("%g %s %.6f %.6f %.6f %.6f\n", s$time[i], fit$states[j], s$pstate[i,j], s$std.err[i,j], s$lower[i,j], s$upper[i,j])) }
 *   cr <- data.frame(time = c(1,2,3,4,5,6,7,8,6,7,8),
 *     endpoint = factor(c(1,1,2,0,1,1,3,0,2,3,0), labels = c("censor","a","b","c")))
 *   show(survfit(Surv(time, endpoint) ~ 1, data = cr), c(1,2,3,5,6,7))
 *   d <- transform(mgus, days = ifelse(is.na(pctime), futime, pctime),
 *     end = factor(ifelse(!is.na(pctime), 1, 2 * death), 0:2, c("censor", "pcm", "death")))
 *   show(survfit(Surv(days, end) ~ 1, d), c(365,1825,3650,5475,7300,9125,12775))
 *
 * Where R is there, r/incidence-against-r.test.ts asks it again, about more people.
 */
import { describe, expect, test } from 'vitest';
import { type Observed, incidenceOf, stepOn } from '@twelvemonth/clinical';

/** The vignette's example. */
const crdata = '1a 2a 3b 4+ 5a 6a 7c 8+ 6b 7c 8+';
/** 241 people with a monoclonal protein (survival::mgus, Kyle 1993): p: a plasma cell disease; d: died without; +: neither. */
const mgus = `
6d 7d 31d 32d 39d 60d 61d 61d 152d 153d 174d 277d 283d 362d 365p 370d 499d 518d 531d 533d 547d 563d 566d 652d 700p 748d
779d 791d 809d 809d 845d 954p 1005d 1077d 1135d 1218p 1249p 1310p 1369d 1392d 1400p 1431p 1492d 1625d 1642p 1673d 1674d
1711d 1766d 1767d 1781d 1783d 1795p 1815d 1826p 1851d 1857d 2006d 2016d 2070p 2099d 2106p 2121d 2185p 2216p 2223d 2236d
2314p 2339d 2400d 2422d 2434d 2445d 2451d 2521p 2556p 2557p 2587d 2618p 2618p 2678d 2797p 2815d 2833d 2844d 2861p 2865d
2908p 2910d 2912p 2953p 2961p 2989d 3010d 3012d 3014d 3167d 3186d 3226d 3227d 3318d 3346p 3386p 3448d 3560d 3561p 3585p
3766p 3790p 3805p 3817p 3913p 3924d 3958d 3962d 3991p 4133d 4139p 4198p 4206d 4228p 4230d 4249d 4311p 4370d 4453d 4534p
4550d 4626p 4656d 4758d 4763d 4791p 4912p 4957p 4961d 5024d 5047d 5084d 5127d 5181d 5216d 5222p 5308d 5354d 5392d 5550d
5692p 5757d 5779d 5796d 5824d 5917d 5925p 5930d 5945p 6008d 6025d 6089d 6126p 6132d 6143d 6147d 6155d 6209d 6256d 6349d
6479d 6607d 6626d 6642d 6727d 6760d 6763d 6778p 6804p 6931d 6970p 7085d 7246d 7428d 7519p 7545p 7817d 7928d 8002d 8264d
8309d 8327d 8421d 8529d 8552d 8600d 8697d 8806d 8856d 8918d 8943p 8948p 8973d 8978d 9019d 9085d 9304d 9408d 9510p 9607d
9618d 9723p 9760d 9953d 9978d 10109p 10164d 10359p 10504d 10770d 11030d 11354p 11395+ 11498+ 11506d 11685p 11719+
11801+ 11861d 11864+ 11865+ 11892+ 12140d 12313+ 12319+ 12349+ 12349+ 12618d 12689+ 12931d 13019+ 13152d 14111d 14325+`;

const names: Readonly<Record<string, string>> = { '+': 'still under way', p: 'pcm', d: 'death' };
const observedIn = (text: string): Observed<string>[] =>
  text
    .trim()
    .split(/\s+/)
    .map((one) => ({ days: Number.parseInt(one, 10), end: names[one.slice(-1)] ?? one.slice(-1) }));

function asPrinted(text: string, ends: readonly string[], line: string): void {
  const [days, end = '', ...printed] = line.split(' ');
  const step = stepOn(incidenceOf(observedIn(text), ends), Number(days));
  const { standardError, lower, upper } = step?.limits[end] ?? {};
  expect([step?.share[end], standardError, lower, upper].map((one) => one?.toFixed(6))).toEqual(printed);
}

test('they are as many as R has', () => expect(observedIn(mgus)).toHaveLength(241));
describe('day, end, share, standard error, lower and upper limit as R prints them', () => {
  test.each([
    '1 a 0.090909 0.086678 0.014029 0.589110',
    '2 a 0.181818 0.116291 0.051905 0.636895',
    '3 a 0.181818 0.116291 0.051905 0.636895',
    '3 b 0.090909 0.086678 0.014029 0.589110',
    '5 a 0.285714 0.140390 0.109064 0.748485',
    '5 b 0.090909 0.086678 0.014029 0.589110',
    '6 a 0.389610 0.153450 0.180044 0.843105',
    '6 b 0.194805 0.124162 0.055857 0.679401',
    '7 a 0.389610 0.153450 0.180044 0.843105',
    '7 b 0.194805 0.124162 0.055857 0.679401',
    '7 c 0.207792 0.129971 0.060984 0.708019',
  ])('the example: %s', (line) => asPrinted(crdata, ['a', 'b', 'c'], line));
  test.each([
    '365 pcm 0.004149 0.004141 0.000587 0.029337',
    '365 death 0.058091 0.015068 0.034940 0.096582',
    '1825 pcm 0.041494 0.012846 0.022618 0.076122',
    '1825 death 0.182573 0.024885 0.139771 0.238482',
    '3650 pcm 0.128631 0.021566 0.092605 0.178671',
    '3650 death 0.315353 0.029931 0.261822 0.379828',
    '5475 pcm 0.195021 0.025523 0.150898 0.252045',
    '5475 death 0.410788 0.031691 0.353143 0.477843',
    '7300 pcm 0.224066 0.026859 0.177150 0.283408',
    '7300 death 0.522822 0.032174 0.463416 0.589843',
    '9125 pcm 0.240664 0.027537 0.192316 0.301166',
    '9125 death 0.601660 0.031535 0.542921 0.666754',
    '12775 pcm 0.265975 0.028494 0.215602 0.328118',
    '12775 death 0.673507 0.031267 0.614930 0.737664',
  ])('241 people: %s', (line) => asPrinted(mgus, ['pcm', 'death'], line));
});
test('where nothing was seen that could tell them there are no limits', () => {
  const [first] = incidenceOf(observedIn(crdata), ['a', 'b', 'c']);
  expect(first?.limits).toMatchObject({ a: { lower: expect.any(Number) }, b: undefined, c: undefined });
  // Everybody came: as many as there were, and nothing to tell how many it might have been.
  expect(incidenceOf(observedIn('3a 4a'), ['a']).at(-1)).toMatchObject({ share: { a: 1 }, limits: { a: undefined } });
});
