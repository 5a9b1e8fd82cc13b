// @ts-check
/** The camera of this very machine: a button, the viewfinder that it opens, and the photo that is taken. */

import { make } from "../lib/dom.js";
import { texts } from "../texts.js";

const words = texts.card;
/** As many pixels as the camera has, up to a phone's; a card needs some hundred of them. */
const WANTED = { video: { facingMode: "environment", width: { ideal: 4096 }, height: { ideal: 3072 } } };
/** Quality of the JPEG. */
const FINE = 0.95;

/**
 * @param {(photo: File) => void} taken
 * @param {(why: string) => void} failed
 */
export function cameraButton(taken, failed) {
  /** @type {MediaStream | null} */
  let stream = null;
  const video = make("video", { playsinline: true, muted: true, "aria-label": words.viewfinder });
  const shoot = make("button", { type: "button", class: "main", onclick: () => photograph() }, words.shoot);
  const viewfinder = make("div", { class: "viewfinder", hidden: true }, video, make("div", { class: "row" }, shoot, make("button", { type: "button", onclick: () => (off(), button.focus()) }, words.camera_off)));
  const button = make("button", { type: "button", "data-camera": "", onclick: () => on() }, words.camera);

  /** Counts what was wished: a camera that comes when it is wanted no more is put away at once. */
  let wished = 0;

  async function on() {
    off();
    const mine = wished;
    try {
      if (!navigator.mediaDevices) throw new Error(words.no_access);
      const came = await navigator.mediaDevices.getUserMedia(WANTED);
      if (mine !== wished) return came.getTracks().forEach((track) => track.stop());
      stream = came;
      video.srcObject = stream;
      viewfinder.hidden = false;
      await video.play();
      shoot.focus();
    } catch (error) {
      if (mine !== wished) return;
      off();
      failed(error instanceof Error ? error.message : String(error));
    }
  }

  function off() {
    wished++;
    stream?.getTracks().forEach((track) => track.stop());
    stream = null;
    video.srcObject = null;
    viewfinder.hidden = true;
  }

  async function photograph() {
    const photo = (await still(stream)) ?? (await frame(video));
    off();
    button.focus();
    if (photo) taken(new File([photo], `${words.taken}.${photo.type === "image/png" ? "png" : "jpg"}`, { type: photo.type }));
  }

  return { button, viewfinder, off };
}

/**
 * A photo as the camera itself codes it, where the browser hands one out. A frame of the film is worse for measuring: what is nearly
 * white in it may have run out of scale on the way.
 * @param {MediaStream | null} stream
 * @returns {Promise<Blob | null>}
 */
async function still(stream) {
  const track = stream?.getVideoTracks()[0];
  const Capture = /** @type {any} */ (window).ImageCapture;
  if (!track || !Capture) return null;
  try {
    return await new Capture(track).takePhoto();
  } catch {
    return null;
  }
}

/** What the viewfinder shows. @param {HTMLVideoElement} video @returns {Promise<Blob | null>} */
function frame(video) {
  const canvas = make("canvas", { width: video.videoWidth, height: video.videoHeight });
  canvas.getContext("2d")?.drawImage(video, 0, 0);
  return new Promise((done) => canvas.toBlob(done, "image/jpeg", FINE));
}
