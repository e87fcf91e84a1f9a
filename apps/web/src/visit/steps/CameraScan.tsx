import { useEffect, useRef, useState } from 'react';
import { Button } from '../../paper/Button.tsx';
import css from '../Visit.module.css';
import { cameraInto, noCameraBecause, readCode, stopCamera } from './camera-reader.ts';

/** Where no scanner is at hand: the device's camera reads the code. It is off before, after, and when the page is left. */
export function CameraScan({ busy, onScan }: { busy: boolean; onScan: (code: string) => void }) {
  const [cannot, setCannot] = useState<string>();
  const [isOn, setOn] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const video = useRef<HTMLVideoElement>(null);
  const take = useRef(onScan);
  useEffect(() => {
    take.current = onScan;
  });
  useEffect(() => {
    void noCameraBecause().then(setCannot);
  }, []);
  useEffect(() => {
    const screen = video.current;
    if (!isOn || screen === null) return;
    const given = new AbortController();
    const off = (): void => {
      given.abort();
      stopCamera(screen);
      setOn(false);
    };
    const away = (): void => {
      if (document.hidden) off();
    };
    document.addEventListener('visibilitychange', away);
    const look = async (): Promise<void> => {
      const refused = await cameraInto(screen);
      // Given up while the browser asked whether it may.
      if (given.signal.aborted) {
        stopCamera(screen);
        return;
      }
      setTrouble(refused);
      const code = refused === undefined ? await readCode(screen, given.signal) : undefined;
      if (given.signal.aborted) return;
      off();
      if (code !== undefined) take.current(code);
    };
    void look();
    return () => {
      document.removeEventListener('visibilitychange', away);
      given.abort();
      stopCamera(screen);
    };
  }, [isOn]);
  if (cannot !== undefined)
    return <p className="quiet">{cannot} Without a scanner, type what is on the pack, and say why.</p>;
  return (
    <section aria-label="Camera" className={css['camera']}>
      {isOn ? (
        <>
          {/* oxlint-disable-next-line jsx-a11y/media-has-caption -- the device's own camera, without sound */}
          <video ref={video} autoPlay muted playsInline aria-label="What the camera sees" />
          <output>Hold the square code before the camera.</output>
          <Button size="big" onClick={() => setOn(false)}>
            Stop the camera
          </Button>
        </>
      ) : (
        <Button size="big" busy={busy} onClick={() => setOn(true)}>
          Read it with the camera
        </Button>
      )}
      {trouble !== undefined && <output>{trouble}</output>}
    </section>
  );
}
