/** Reads aloud with the device's own voices, never one that needs the network. */

const voicesFor = (language: string): SpeechSynthesisVoice[] =>
  (globalThis.speechSynthesis?.getVoices() ?? []).filter(
    (voice) => voice.localService && voice.lang.split(/[-_]/)[0] === language.split("-")[0],
  );

/** Does this device have a voice of its own for the language? */
export const hasVoice = (language: string): boolean => voicesFor(language).length > 0;

/** Calls when the device's list of voices comes or changes, until the returned function is called. */
export function onVoices(call: () => void): () => void {
  globalThis.speechSynthesis?.addEventListener("voiceschanged", call);
  return () => globalThis.speechSynthesis?.removeEventListener("voiceschanged", call);
}

export function readAloud(text: string, language: string, onEnd: () => void): void {
  const [voice] = voicesFor(language);
  if (!voice) return;
  stopReading();
  const utterance = new SpeechSynthesisUtterance(text);
  utterance.voice = voice;
  utterance.lang = voice.lang;
  utterance.rate = 0.9;
  utterance.onend = onEnd;
  utterance.onerror = onEnd;
  speechSynthesis.speak(utterance);
}

export const stopReading = (): void => globalThis.speechSynthesis?.cancel();
