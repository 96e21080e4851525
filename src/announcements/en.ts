/**
 * English. Short, imperative, the item first; never an address word, so that the companion cannot call itself.
 * Where a figure or a treatment is at stake it defers to the product label, local rules or a clinician.
 */
import { commands } from "../intent/phrases";
import { durationWords, letterWords, numberWords, spellingWords } from "./enNumbers";
import type { Phrasebook } from "./phrasebook";

const toConfirm = `To confirm: ${commands.confirm}.`;

export const en: Phrasebook = {
  language: "en",
  number: numberWords,
  duration: durationWords,
  listAnd: "and",
  months: [
    ...["January", "February", "March", "April", "May", "June"],
    ...["July", "August", "September", "October", "November", "December"],
  ],
  dayOf: "{day} {month} twenty {year}",
  letters: letterWords,
  spelling: spellingWords,

  refused: {
    notNow: {
      plain: "Not at this point. Finish this step first.",
      named: "{item}: not at this point. Finish this step first.",
    },
    answerFirst: {
      plain: "I asked you something. Answer that first.",
      named: "{item}: I asked you something. Answer that first.",
    },
    paused: {
      plain: `We are paused. To go on: ${commands.resume}.`,
      named: `{item}: we are paused. To go on: ${commands.resume}.`,
    },
    handsNotWashed: {
      plain: "Hands are not washed. Wash or rub them first.",
      named: "{item}: hands are not washed. Wash or rub them first.",
    },
    glovesStillOn: {
      plain: "Gloves are still on. Take them off first.",
      named: "{item}: gloves are still on. Take them off first.",
    },
    wetClockRuns: {
      plain: "A surface must still stay wet. Wait until I say time.",
      named: "{item}: must still stay wet. Wait until I say time.",
    },
    outOfDate: {
      plain: "That is out of date. Use one in date.",
      named: "{item}: out of date. Use one in date.",
    },
    sharpsNotCounted: {
      plain: "Sharps are not counted. Count those in the container first.",
      named: "{item}: not counted. Count those in the sharps container first.",
    },
    sharpsNotSettled: {
      plain: "The sharps count does not match. Count again, or give a reason.",
      named: "{item}: the count does not match. Count again, or give a reason.",
    },
    stepsLeft: {
      plain: "Steps are left. Do each one, or leave it out with a reason.",
      named: "{item}: steps are left. Do each one, or leave it out with a reason.",
    },
    notSkippable: {
      plain: "This step guards health and stays in. Do it to go on.",
      named: "{item}: this step guards health and stays in. Do it to go on.",
    },
    nothingToUndo: {
      plain: "Nothing to undo. Only what you reported last can be undone.",
      named: "{item}: nothing to undo. Only what you reported last can be undone.",
    },
    noNeedleInUse: {
      plain: "No needle is in use. Open one first.",
      named: "{item}: not in use. Open one first.",
    },
    noEarlierStep: {
      plain: "This is the first step. Go on from here.",
      named: "{item}: this is the first step. Go on from here.",
    },
    unknownItem: {
      plain: "I do not know that item. It must be in the protocol.",
      named: "{item}: not known here. It must be in the protocol.",
    },
    noSuchEvent: {
      plain: "This protocol has no steps for that. Leave a note instead.",
      named: "{item}: this protocol has no steps for that. Leave a note instead.",
    },
    cleanFirst: {
      plain: "Something is still soiled. Clean and disinfect it first.",
      named: "{item}: still soiled. Clean and disinfect it first.",
    },
    glovesSoiled: {
      plain: "Your gloves are soiled. Change them first.",
      named: "{item}: your gloves are soiled. Change them first.",
    },
    glovesFirst: {
      plain: "It is sterile. Put on fresh gloves first.",
      named: "{item}: sterile. Put on fresh gloves first.",
    },
    itemSoiled: {
      plain: "That is soiled. Leave it until it is cleaned.",
      named: "{item}: soiled. Leave it until it is cleaned.",
    },
    outOfUse: {
      plain: "That is out of use. Leave it alone.",
      named: "{item}: out of use. Leave it alone.",
    },
    skinFirst: {
      plain: "The skin has had no antiseptic yet. That comes first.",
      named: "{item}: no antiseptic yet. That comes first.",
    },
    codeUnreadable: {
      plain: "I cannot read that code. Hold up the pack's own code, or type the lot.",
      named: "{item}: I cannot read that code. Hold up the pack's own code, or type the lot.",
    },
    codeWithoutLot: {
      plain: "That code names no lot. Hold up the other one, or type it.",
      named: "{item}: that code names no lot. Hold up the other one, or type it.",
    },
    codeUnsure: {
      plain: "That code may be printed wrongly. Read the pack and type its lot.",
      named: "{item}: that code may be printed wrongly. Read the pack and type its lot.",
    },
  },

  deviated: {
    touchedWithSoiledGloves: {
      plain: "Touched with soiled gloves. It counts as soiled.",
      named: "{item}: touched with soiled gloves. It counts as soiled.",
    },
    touchedWithUnwashedHands: {
      plain: "Touched with unwashed hands. It counts as soiled.",
      named: "{item}: touched with unwashed hands. It counts as soiled.",
    },
    glovesOverUnwashedHands: {
      plain: "Gloves over unwashed hands. Take them off, wash, fresh gloves.",
      named: "{item}: gloves over unwashed hands. Take them off, wash, fresh gloves.",
    },
    glovesOverGloves: {
      plain: "Gloves over gloves. Take all off, wash, fresh gloves.",
      named: "{item}: gloves over gloves. Take all off, wash, fresh gloves.",
    },
    washedInGloves: {
      plain: "Washing gloves does not count. Take them off, then wash.",
      named: "{item}: washing gloves does not count. Take them off, then wash.",
    },
    appliedBeforeCleaning: {
      plain: "It was not cleaned first. Clean it, then wet it once more.",
      named: "{item}: not cleaned first. Clean it, then wet it once more.",
    },
    coveredUnclean: {
      plain: "Covered while not clean. Uncover, clean and disinfect, cover again.",
      named: "{item}: covered while not clean. Uncover, clean and disinfect, cover again.",
    },
    openedWithSoiledGloves: {
      plain: "Opened with soiled gloves. Not sterile: discard it, open another.",
      named: "{item}: opened with soiled gloves. Not sterile: discard it, open another.",
    },
    openedWithUnwashedHands: {
      plain: "Opened with unwashed hands. Not sterile: discard it, open another.",
      named: "{item}: opened with unwashed hands. Not sterile: discard it, open another.",
    },
    openedAgain: {
      plain: "That pack was open already. Not sterile: discard it, open another.",
      named: "{item}: open already. Not sterile: discard it, open another.",
    },
    usedTaggedOut: {
      plain: "Step done, though that is out of use. It counts as used.",
      named: "{item}: out of use, yet the step was done with it. It counts as used.",
    },
    openedOutOfDate: {
      plain: "Opened out of date. Discard it, open one in date.",
      named: "{item}: opened out of date. Discard it, open one in date.",
    },
    appliedOutOfDate: {
      plain: "That product is out of date. It does not count: wet it with one in date.",
      named: "{item}: out-of-date product. It does not count: wet it with one in date.",
    },
    sharpNotInSharps: {
      plain: "A sharp is outside the sharps container. Make it safe, with a tool, not fingers.",
      named: "{item}: outside the sharps container. Make it safe, with a tool, not fingers.",
    },
    wipedEarly: {
      plain: "Wiped early. Wet it once more.",
      named: "{item}: wiped early. Wet it once more.",
    },
    wipedWithSoiledGloves: {
      plain: "Wiped with soiled gloves. Fresh gloves, then disinfect it once more.",
      named: "{item}: wiped with soiled gloves. Fresh gloves, then disinfect it once more.",
    },
    neverWet: {
      plain: "It was not wetted. Wet it for the whole time on the label.",
      named: "{item}: not wetted. Wet it for the whole time on the label.",
    },
    skinBrokenWithoutGloves: {
      plain: "No clean gloves on. Stop, wash, fresh gloves.",
      named: "{item}: no clean gloves on. Stop, wash, fresh gloves.",
    },
    skinNotPrepared: {
      plain: "The skin had no antiseptic. Stop, and disinfect it before you go on.",
      named: "{item}: no antiseptic. Stop, and disinfect it before you go on.",
    },
    usedUnsterile: {
      plain: "That is not sterile. Stop, and take a sterile one.",
      named: "{item}: not sterile. Stop, and take a sterile one.",
    },
    broughtBackSoiled: {
      plain: "It came back soiled. Clean and disinfect it first.",
      named: "{item}: came back soiled. Clean and disinfect it first.",
    },
    stepLeftOut: { plain: "Left out.", named: "{item}: left out." },
    problemReported: { plain: "Problem noted.", named: "{item}: problem noted." },
    dropped: {
      plain: "Dropped. It counts as soiled.",
      named: "{item}: dropped. It counts as soiled.",
    },
    touchedUnplanned: {
      plain: "Touched. It counts as soiled.",
      named: "{item}: touched. It counts as soiled.",
    },
    barrierTorn: {
      plain: "Barrier torn. What it covers counts as soiled.",
      named: "{item}: barrier torn. It counts as soiled.",
    },
    gloveTorn: {
      plain: "Glove torn. Both off, wash, fresh gloves.",
      named: "{item}: glove torn. Both off, wash, fresh gloves.",
    },
    sharpsMismatch: {
      plain: "The sharps count does not match. Search before you go on.",
      named: "{item}: the count does not match. Search before you go on.",
    },
  },

  phase: {
    setUp: "Set-up.",
    procedure: "Procedure. Tell me what happens.",
    dressing: "Dressing.",
    breakdown: "Breakdown. Sharps first.",
    closed: "Session closed.",
  },
  closed: {
    balanced: "Sharps are balanced.",
    discrepancy: "The sharps do not balance. It stands first on the record.",
    unready: "Not ready for the next client: {items}.",
  },
  clock: {
    reapplyDue: "{items}: apply again now.",
    lapsed: "{items}: too long without more. Wet it once more, the time starts over.",
    timeUp: "{items}: time. Stayed wet?",
    stillWet: "I lost sight for a while. {items}: still wet?",
    dried: "{items}: wet it once more, the time starts over.",
    ready: "{items}: ready.",
  },
  ready: {
    first: "All ready in {duration}.",
    later: "Later than planned: all ready in {duration}.",
    sooner: "Sooner than planned: all ready in {duration}.",
  },
  wipedEarly: {
    plain: "{duration} short, wet it once more.",
    named: "{item}: {duration} short, wet it once more.",
  },

  ask: {
    firstItem: "Which one? {item}?",
    nextItem: "{item}?",
    noItem: "None of those. Noted without a name.",
    skipReason: `Why? ${commands.reasonNotForClient}, ${commands.reasonNoStock}, or ${commands.reasonOwnDecision}.`,
    outOfUse: "Take something out of use?",
    sharps: {
      none: "No sharps opened. Is that right?",
      one: "One opened. Is one in the container?",
      many: "{opened} opened. Are {expected} in the container?",
      recount: "Count again, with eyes only. Should be {expected}. Is it?",
    },
    discrepancy: {
      first: "The count still does not match.",
      reason: {
        lost: "Is one lost?",
        miscounted: "Were they miscounted?",
        exposure: "Was there an accident?",
        unexplained: "No explanation?",
      },
    },
    closing: {
      balanced: "Close and seal? {opened} sharps opened, all accounted for.",
      discrepancy: "Close and seal? The sharps do not balance.",
      deviations: { one: "One deviation.", many: "{count} deviations." },
      leftOut: { one: "One step left out.", many: "{count} steps left out." },
      confirm: toConfirm,
    },
    exposure: {
      // Wash needlesticks and cuts with soap and water; flush splashes; irrigate eyes; seek treatment at once:
      // CDC/NIOSH, emergency needlestick information (from memory).
      firstAid:
        "Stop. Put the sharp down safely. Wash the wound with soap and running water. Eyes or mouth: rinse with plenty of clean water. Then call a clinician at once.",
      choice: `End the session? ${commands.yes} ends it. ${commands.no} goes on, with safety steps.`,
      confirmEnd: `The session ends here. ${toConfirm}`,
    },
    lot: {
      read: "{item}: lot {lot}.",
      goodUntil: "Good until {date}.",
      noExpiry: "No date on it.",
      isRight: toConfirm,
    },
    undo: {
      question: `Undo {what}? ${toConfirm}`,
      what: {
        stepDone: "the last step",
        stepSkipped: "leaving that out",
        applied: "the wetting",
        wiped: "the wipe",
        ready: "the yes to stayed wet",
        event: "the last event",
        lot: "the lot",
        count: "the sharps count",
        lastReport: "the last report",
      },
    },
    whichPhrase: "Did you say: {phrase}?",
    phrase: commands,
  },

  answer: {
    noClock: "No clock runs.",
    remaining: "{item}: {duration}.",
    waiting: "{item}: time is up. Stayed wet?",
    stepsLeft: { none: "No steps left.", one: "One step left.", many: "{count} steps left." },
    notReady: { all: "Not ready yet: {items}.", more: "Not ready yet: {items}, and {count} more." },
    outOfUse: "Out of use: {items}.",
    sharpsOut: { one: "One sharp is out.", many: "{count} sharps are out." },
    working: "Procedure. Tell me what happens, or that the tattoo is finished.",
    toClose: `Every step is done. To close: ${commands.close}.`,
    options: { all: "You may say: {phrases}.", more: "You may say: {phrases}. The screen shows the rest." },
    holdUp: "Hold the code up to the camera.",
  },

  mayTouch: {
    no: "No.",
    yes: {
      clean: "Yes. {item}: clean, and so are your hands.",
      covered: "Yes. {item}: covered. Only the cover is touched.",
      bothSoiled: "Yes. {item}: soiled already. Touch nothing clean after it.",
    },
  },

  event: {
    freshGloves: "Fresh gloves.",
    tornGlove: "Torn glove.",
    tornBarrier: "Torn barrier.",
    newNeedle: "New needle.",
    parkNeedle: "Parked needle.",
    moreInk: "More ink.",
    dropped: "Something dropped.",
    touched: "Something touched.",
    photo: "Photo.",
    machineSwap: "Other machine.",
    takeBreak: "Break.",
    clientLeaves: "Client leaves.",
    clientReturns: "Client is back.",
    clientUnwell: "Stop work.",
    stopEarly: "Stopping early.",
    note: "A note.",
  },
  kept: {
    paused: "Paused.",
    resumed: "Going on.",
    undone: "Undone.",
    leftOut: "Left out.",
    lot: "Lot kept.",
    note: "Note kept.",
    count: "Count kept.",
    wiped: "Wiped.",
    briskOn: "Brisk.",
    briskOff: "Careful.",
    problem: "Problem noted.",
  },
  eventItem: "{item}, noted.",
  note: {
    recording: "Recording.",
    nothing: "Nothing heard. No note.",
    enough: "This record holds no more notes. Write it down.",
  },

  begun: "Session begun. The product label and local rules come before me.",
  reopened: "Open again, where we were.",
  carriedOver: "Left unready last time: {items}. We begin there.",
  exposure: {
    ended: "Session ended. Call a clinician now, if you have not.",
    resuming: "Going on needs every safety step.",
    resumed: "Going on. See a clinician today.",
  },
  notKept: {
    storageFull: "Not kept. The storage is full. Make room, then repeat it.",
    writeFailed: "Not kept. Writing failed. Repeat it, or write it on paper.",
  },
  ear: {
    trouble: {
      none: "I find no microphone. Use the pedal or the screen.",
      denied: "I may not use the microphone. Use the pedal or the screen.",
      lost: "I cannot hear you. Use the pedal or the screen.",
    },
    back: "I hear you again.",
    check: {
      machine: "Run your machine, and say nothing.",
      phrases: "Now say what the screen shows.",
      good: "I hear you well.",
      fair: "I hear you, but not always. The screen says what helps.",
      poor: "I do not hear you well enough. The screen says what helps.",
    },
    teach: {
      begin: "I ask for each phrase three times. Say it as you say it at work.",
      ask: "Say: {address} {phrase}.",
      addresses: { station: "station", workbench: "workbench", companion: "companion" },
      clipped: "That was too loud. Again.",
      tooQuiet: "That was too quiet. Again.",
      cutOff: "That was cut off. Again.",
      other: "That sounded different. Again.",
      nothing: "I heard nothing. Again.",
      learning: "Thank you. I am learning.",
      better: "I know your voice now.",
      noBetter: "It did not help. Nothing was changed.",
    },
  },
  volume: { louder: "Louder.", quieter: "Quieter.", loudest: "This is loudest.", quietest: "This is quietest." },
  caution: {
    label: "The product label decides.",
    localRules: "Your local rules decide.",
    clinician: "Ask a clinician.",
    emergency: "In doubt, call the emergency number.",
  },
  handCount: {
    begun: "Counting to {seconds}, from now.",
    enough: "{seconds}. Long enough.",
    startAgain: "I lost count. Start again.",
    short: "{seconds} seconds short.",
  },
  tour: {
    welcome:
      "I am the second person in the room. I read each step aloud, and you answer. From start to close there is nothing to touch.",
    done: "Speak to me by my name and a phrase. Chat does not reach me. When a step is done, tell me.",
    whatNow: "Lost the thread? Ask me, at any time.",
    wet: "When a surface is wet all over, tell me. I keep its time, for as many surfaces as you like.",
    timeUp:
      "When the time of the label is full, I ask: stayed wet? Only your yes makes it ready. In doubt I start again: late, never early.",
    undo: "Said something wrong? Take it back.",
    refuse:
      "If something is not safe now, I say no, and why, and what would make it right. What happened is always kept.",
    accident:
      "After a needlestick, a cut or a splash, first aid comes first. The red target and the key F nine reach me too. Try it: here it does nothing.",
    quiet:
      "While you work I keep quiet, unless silence would be less safe. That is all. Now watch a session, or begin your own.",
  },
  soundCheck: "This is how I sound. Is it loud enough over the machine?",
};
