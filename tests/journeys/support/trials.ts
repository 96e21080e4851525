/**
 * What a page does with a SpeechRecognition class, written down as plain data. Runs inside the page, in any browser: it may
 * use nothing from outside itself.
 */
export interface Fired {
  readonly type: string;
  readonly error: string | null;
  readonly resultIndex: number | null;
  /** One entry for each result at that moment. */
  readonly results: readonly { readonly transcript: string; readonly confidence: number; readonly isFinal: boolean }[];
  readonly canBeStopped: boolean;
}

export interface Wishes {
  readonly lang?: string;
  readonly continuous?: boolean;
  readonly interimResults?: boolean;
  readonly processLocally?: boolean;
  /** Seconds of silence instead of the recording. */
  readonly silenceSec?: number;
  /** What is done when an event of this type comes for the first time. */
  readonly on?: Readonly<Record<string, "stop" | "abort" | "startAgain">>;
  /** The session is stopped after so many final results. */
  readonly stopAfter?: number;
  /** Events are written down until one of this type came; "end" if left out. */
  readonly until?: string;
}

export interface Trials {
  run(wishes: Wishes): Promise<readonly Fired[]>;
  /** The name of what `work` throws, or null. */
  thrownBy(work: () => unknown): string | null;
  make(): EventTarget & Record<string, unknown>;
  silentTrack(): MediaStreamTrack;
}

/** Puts `trials` into the page. The recording lies beside the page as `said.wav`. */
export function installTrials(): void {
  const Recognition = (
    globalThis as unknown as { OwnSpeechRecognition: new () => EventTarget & Record<string, unknown> }
  ).OwnSpeechRecognition;
  const types = ["audiostart", "soundstart", "speechstart", "speechend", "soundend", "audioend", "result", "nomatch"];

  const silentTrack = (): MediaStreamTrack => {
    const context = new AudioContext();
    const hall = context.createMediaStreamDestination();
    const hum = context.createConstantSource();
    hum.offset.value = 0;
    hum.connect(hall);
    hum.start();
    return hall.stream.getAudioTracks()[0] as MediaStreamTrack;
  };

  const playing = async (): Promise<{
    track: MediaStreamTrack;
    begin: (over: () => void) => void;
    close: () => void;
  }> => {
    const context = new AudioContext();
    const sound = await context.decodeAudioData(await (await fetch("said.wav")).arrayBuffer());
    const hall = context.createMediaStreamDestination();
    const source = context.createBufferSource();
    source.buffer = sound;
    source.connect(hall);
    const track = hall.stream.getAudioTracks()[0] as MediaStreamTrack;
    /** A little after its end whoever still listens is told to stop. */
    const begin = (over: () => void) => {
      source.onended = () => setTimeout(over, 3_000);
      source.start();
    };
    return { track, begin, close: () => void context.close() };
  };

  const run: Trials["run"] = async (wishes) => {
    const played = wishes.silenceSec ? null : await playing();
    const recognition = new Recognition();
    recognition.lang = wishes.lang ?? "en-GB";
    recognition.continuous = wishes.continuous ?? false;
    recognition.interimResults = wishes.interimResults ?? false;
    recognition.processLocally = wishes.processLocally ?? false;
    const fired: Fired[] = [];
    const call = (name: string, ...given: unknown[]) => {
      try {
        Reflect.apply(recognition[name] as () => void, recognition, given);
      } catch (error) {
        const threw = `threw ${(error as { name?: string }).name}`;
        fired.push({ type: threw, error: null, resultIndex: null, results: [], canBeStopped: false });
      }
    };
    const done = new Set<string>();
    await new Promise<void>((ended) => {
      for (const type of [...types, "start", "error", "end"])
        recognition.addEventListener(type, (event) => {
          const { error, resultIndex, results } = event as unknown as {
            error?: string;
            resultIndex?: number;
            results?: Iterable<{ isFinal: boolean; 0: { transcript: string; confidence: number } }>;
          };
          const told = [...(results ?? [])].map(({ isFinal, 0: { transcript, confidence } }) => ({
            transcript,
            confidence,
            isFinal,
          }));
          const canBeStopped = event.bubbles || event.cancelable;
          fired.push({ type, error: error ?? null, resultIndex: resultIndex ?? null, results: told, canBeStopped });
          // The sound begins once it is listened to: nothing of it is lost while a browser opens its audio.
          if (type === "audiostart") played?.begin(() => call("stop"));
          const wish = done.has(type) ? undefined : wishes.on?.[type];
          done.add(type);
          if (wish === "startAgain") call("start", silentTrack());
          else if (wish) call(wish);
          if (type === "result" && told.filter(({ isFinal }) => isFinal).length === wishes.stopAfter) call("stop");
          if (type === (wishes.until ?? "end")) ended();
        });
      call("start", played?.track ?? silentTrack());
    });
    played?.close();
    return fired;
  };

  const trials: Trials = {
    run,
    thrownBy(work) {
      try {
        work();
        return null;
      } catch (error) {
        return (error as { name?: string }).name ?? String(error);
      }
    },
    make: () => new Recognition(),
    silentTrack,
  };
  Object.assign(globalThis, { trials });
}
