/** The camera as a scanner: whether this browser can read a square code with it, and reading one. The browser's own detector does it. */

type Detector = { readonly detect: (from: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]> };
type Detectors = {
  new (options: { readonly formats: readonly string[] }): Detector;
  readonly getSupportedFormats: () => Promise<readonly string[]>;
};

/** The square code on packs of medicines: GS1 DataMatrix. */
const format = 'data_matrix';

/** Time for the screen to answer a finger between two looks. */
const pauseMilliseconds = 120;

const detectors = (): Detectors | undefined => (globalThis as { readonly BarcodeDetector?: Detectors }).BarcodeDetector;

/** Undefined: it can. Otherwise why it cannot, in words. */
export async function noCameraBecause(): Promise<string | undefined> {
  if (!window.isSecureContext) return 'The camera is not used here: the browser does not trust this connection.';
  // By types always there; in a browser of an unusual kind it is not.
  if ((navigator as { readonly mediaDevices?: unknown }).mediaDevices === undefined)
    return 'This browser lends its camera to no page.';
  const all = detectors();
  const formats = all === undefined ? [] : await all.getSupportedFormats().catch(() => []);
  return formats.includes(format) ? undefined : 'This browser cannot read square codes with a camera.';
}

const refusedBecause: Readonly<Record<string, string>> = {
  NotAllowedError: 'The camera was not allowed. Allow it for this page in the browser, or go on without it.',
  NotFoundError: 'This device has no camera.',
  OverconstrainedError: 'This device has no camera.',
  NotReadableError: 'The camera is in use by another program.',
};

/** Undefined where the camera is at work; otherwise a sentence. */
export async function cameraInto(video: HTMLVideoElement): Promise<string | undefined> {
  try {
    video.srcObject = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' }, audio: false });
    return undefined;
  } catch (error) {
    stopCamera(video);
    const name = error instanceof DOMException ? error.name : '';
    return refusedBecause[name] ?? 'The camera could not be started.';
  }
}

/** The light goes out: nothing is watched any longer. */
export function stopCamera(video: HTMLVideoElement): void {
  if (video.srcObject instanceof MediaStream) for (const track of video.srcObject.getTracks()) track.stop();
  video.srcObject = null;
}

/** The first code that comes before the camera; undefined once it is given up. */
export async function readCode(video: HTMLVideoElement, givenUp: AbortSignal): Promise<string | undefined> {
  const Detectors = detectors();
  if (Detectors === undefined) return undefined;
  const detector = new Detectors({ formats: [format] });
  while (!givenUp.aborted) {
    // A frame that cannot be looked at is followed by another.
    const [found] = await detector.detect(video).catch(() => []);
    if (found !== undefined && found.rawValue !== '') return found.rawValue;
    await new Promise((resolve) => setTimeout(resolve, pauseMilliseconds));
  }
  return undefined;
}
