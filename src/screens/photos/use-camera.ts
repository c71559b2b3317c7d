import { useEffect, useRef, useState } from 'preact/hooks';

export type CameraState = 'starting' | 'on' | 'no-way' | 'refused' | 'none' | 'taken' | 'failed';

/**
 * The camera in the page. Leaving for the phone's camera app may get the page killed for its memory, so the app never
 * does. It is off as soon as the screen is left or the phone is put away, and on again when it comes back.
 */
export function useCamera() {
  const video = useRef<HTMLVideoElement>(null);
  const [state, setState] = useState<CameraState>('starting');
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let stop = start(video.current, setState);
    const follow = () => {
      stop();
      if (document.visibilityState === 'visible') stop = start(video.current, setState);
    };
    const leave = () => stop();
    document.addEventListener('visibilitychange', follow);
    addEventListener('pagehide', leave);
    return () => {
      document.removeEventListener('visibilitychange', follow);
      removeEventListener('pagehide', leave);
      stop();
    };
  }, [tries]);
  return { video, state, again: () => setTries(tries + 1) };
}

/** Starts it and returns its undo, which also stops a camera that only comes on later. */
function start(video: HTMLVideoElement | null, tell: (state: CameraState) => void): () => void {
  let wanted = true;
  let stream: MediaStream | undefined;
  const stop = () => {
    wanted = false;
    stream?.getTracks().forEach((track) => track.stop());
    if (video) video.srcObject = null;
  };
  const come = async () => {
    // Not on every browser, whatever its types say: over plain http a page is given no cameras at all.
    const devices: MediaDevices | undefined = navigator.mediaDevices;
    if (devices?.getUserMedia === undefined) return tell('no-way');
    tell('starting');
    const got = await devices.getUserMedia({
      audio: false,
      video: { facingMode: { ideal: 'environment' }, width: { ideal: 1920 }, height: { ideal: 1440 } },
    });
    stream = got;
    if (!wanted || !video) return stop();
    got.getVideoTracks().forEach((track) => track.addEventListener('ended', () => wanted && tell('taken')));
    video.srcObject = got;
    await video.play();
    // Stopped meanwhile, or started anew.
    if (video.srcObject === got) tell('on');
  };
  come().catch((error: unknown) => {
    if (!wanted) return;
    stop();
    tell(stateAfter(error));
  });
  return stop;
}

function stateAfter(error: unknown): CameraState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'none';
    case 'NotReadableError':
    case 'AbortError':
      return 'taken';
    default:
      return 'failed';
  }
}

const BUT = 'A picture can still be chosen from the phone.';

/** Why there is no camera, and what can be done; empty while there is one. */
export function sayCamera(state: CameraState): string {
  switch (state) {
    case 'starting':
    case 'on':
      return '';
    case 'no-way':
      return `This browser gives a page no camera. ${BUT}`;
    case 'refused':
      return `The camera is not allowed here. Allow it for this page in the browser’s settings, then try again. ${BUT}`;
    case 'none':
      return `No camera was found. ${BUT}`;
    case 'taken':
      return `The camera has stopped, or another app holds it. Close that app and try again. ${BUT}`;
    case 'failed':
      return `The camera did not start. Try again. ${BUT}`;
    default:
      return state satisfies never;
  }
}
