import { session } from "./parts";

/**
 * What is being talked about. Open: the step is awaited. Else one question stands: which item, which reason, or a
 * read-back. Reports are taken in any of them; a request waits until the question is answered.
 */
export const conversation = session.createStateConfig({
  initial: "open",
  on: {
    // Reports, taken whatever is being asked.
    "exposure.reported": { target: ".open", actions: "forgetName" },
    "surface.applied": [
      { guard: "sprayIsUnclear", target: ".naming", actions: "askName" },
      { target: ".open", actions: ["forgetName", "stateApplied", "walkOnIfStepDone"] },
    ],
    "surface.wiped": [
      { guard: "wipesHere", target: ".open", actions: ["forgetName", { type: "hearDone" }] },
      { guard: "knowsWhatWiped", target: ".open", actions: ["forgetName", "stateWiped"] },
      { target: ".naming", actions: "askName" },
    ],
    "event.reported": [
      { guard: "endsExposure", target: ".readBack.exposureEnd" },
      { guard: "needsItem", target: ".naming", actions: "askName" },
      { target: ".open", actions: ["forgetName", "stateEvent", "walkOn"] },
    ],
    "item.outOfUse": [
      { guard: "namesNoItem", actions: "refuseAnswerFirst" },
      { guard: "mayTagOut", actions: ["stateOutOfUse", "walkOn"] },
      { actions: "refuseNotNow" },
    ],
    "item.backInUse": [{ guard: "isOutOfUse", actions: ["stateBackInUse", "walkOn"] }, { actions: "refuseNotNow" }],
    "note.recorded": { actions: "stateNote" },
    "lot.given": { actions: ["stateLot", "stateHere"] },
    "ear.lost": { actions: "stateEarLost" },
    "ear.back": { actions: "stateEarBack" },
    "brisk.set": { actions: "stateBrisk" },
    "count.due": { target: ".readBack.sharps" },
    "sharps.counted": [
      { guard: "countBalances", target: ".open", actions: ["stateCountAgrees", "passCount"] },
      { guard: "recountedBefore", target: ".naming", actions: ["stateCountDiffers", "askDiscrepancy"] },
      { target: ".readBack.sharps", actions: ["stateCountDiffers", "stateRecount"] },
    ],
    "sharps.explained": { target: ".open", actions: ["stateDiscrepancy", "passCount"] },

    // Requests, which wait.
    "session.close": { actions: "refuseAnswerFirst" },
    "may.touch": { actions: "refuseAnswerFirst" },
    "code.wanted": { actions: "refuseAnswerFirst" },
    "step.done": { actions: "refuseAnswerFirst" },
    "step.skip": { actions: "refuseAnswerFirst" },
    "step.back": { actions: "refuseAnswerFirst" },
    "step.problem": { actions: "refuseAnswerFirst" },
    "procedure.finish": { actions: "refuseAnswerFirst" },
    "session.pause": { actions: "refuseAnswerFirst" },
    "session.resume": { guard: "notInFirstAid", actions: "refuseAnswerFirst" },
    "report.undo": { target: ".open", actions: ["forgetName", "walkOn"] },
    "answer.yes": { actions: "refuseAnswerFirst" },
    "answer.no": { actions: "refuseAnswerFirst" },
    "answer.confirm": { actions: "refuseAnswerFirst" },
    "reason.given": { actions: "refuseAnswerFirst" },
  },
  states: {
    open: {
      on: {
        "step.done": [
          { guard: "inFirstAid", actions: "refuseAnswerFirst" },
          { guard: "isPaused", actions: ["stateResumed", "hearDone"] },
          { guard: "wetnessNotSaid", actions: "refuseAnswerFirst" },
          { guard: "wipesEarly", actions: "stateWipedEarlyHere" },
          { guard: "hasStepHere", actions: ["stateStepsDone", "walkOn"] },
          { guard: "awaitsBeginning", actions: "walkOn" },
          { actions: "refuseNotNow" },
        ],
        "step.skip": [
          { guard: "nothingToWalk", actions: "refuseNotNow" },
          { guard: "notSkippable", actions: "refuseNotSkippable" },
          { target: "reason" },
        ],
        "step.back": [{ guard: "nothingToGoBackTo", actions: "refuseNoEarlierStep" }, { actions: "stateBack" }],
        "plan.chosen": { guard: "planIsSound", actions: "takePlan" },
        "step.problem": { actions: ["stateProblem", "offerOutOfUse"] },
        "item.outOfUse": [
          { guard: "hasNoneToTag", actions: "refuseNotNow" },
          { guard: "namesNoItem", target: "naming", actions: ["askOutOfUse", "forgetOffer"] },
          { guard: "mayTagOut", actions: ["stateOutOfUse", "walkOn"] },
          { actions: "refuseNotNow" },
        ],
        "may.touch": [
          { guard: "inFirstAid", actions: "refuseAnswerFirst" },
          { guard: "touchesWhat", target: "naming", actions: "askName" },
          { actions: "stateMayTouch" },
        ],
        "code.wanted": [
          { guard: "inFirstAid", actions: "refuseAnswerFirst" },
          { guard: "isPaused", actions: "refusePaused" },
          { guard: "expectsNoLot", actions: "refuseNotNow" },
          {},
        ],
        "procedure.finish": [{ guard: "mayFinish", actions: "keepFinish" }, { actions: "refuseNotNow" }],
        "session.pause": [{ guard: "isPaused", actions: "refusePaused" }, { actions: "statePaused" }],
        "session.resume": [
          { guard: "isPaused", actions: ["stateResumed", "stateHere"] },
          { guard: "notInFirstAid", actions: "refuseNotNow" },
        ],
        "session.close": [
          { guard: "notInBreakdown", actions: "refuseNotNow" },
          { guard: "mayCloseUnfinished", target: "readBack.close" },
          { guard: "hasStepHere", actions: "refuseStepsLeft" },
          { guard: "wetClockRuns", actions: "refuseWetClockRuns" },
          { guard: "sharpsOpenQuestion", actions: "refuseSharps" },
          { target: "readBack.close" },
        ],
        "report.undo": [
          { guard: "undoLooksSafer", target: "readBack.undo" },
          { guard: "canUndo", actions: ["stateUndone", "stateHere"] },
          { actions: "refuseNothingToUndo" },
        ],
        // In first aid the question is whether the session ends; ending is the default, and read back.
        "answer.yes": [
          { guard: "inFirstAid", target: "readBack.exposureEnd" },
          { guard: "isQuestioned", actions: ["stateYes", "forgetAsked"] },
          { guard: "isOffered", target: "naming", actions: ["askOutOfUse", "forgetOffer"] },
          { actions: "refuseNotNow" },
        ],
        "answer.no": [
          { guard: "inFirstAid", actions: "resumeAfterExposure" },
          { guard: "isQuestioned", actions: ["stateNo", "forgetAsked"] },
          { guard: "isOffered", actions: "forgetOffer" },
          { actions: "refuseNotNow" },
        ],
        "answer.confirm": { actions: "refuseNotNow" },
        "reason.given": { actions: "refuseNotNow" },
        "count.due": { target: "readBack.sharps" },
        // Held up where no lot is wanted, or the one in use already: nothing to say.
        "lot.shown": [
          { guard: "expectsNoLot" },
          { guard: "isPastItsDay", actions: "stateCodeShown" },
          { guard: "isKnownLot" },
          { target: "readBack.lot", actions: "stateCodeShown" },
        ],
        "code.refused": [{ guard: "expectsNoLot" }, { actions: "stateCodeRefused" }],
      },
    },
    /** "Which? Lamp?" The report is kept when the name is found, or when nobody can name it. */
    naming: {
      on: {
        "item.outOfUse": [
          { guard: "tagIsNamed", target: "open", actions: ["stateOutOfUse", "forgetName", "walkOn"] },
          { actions: "refuseAnswerFirst" },
        ],
        "may.touch": [
          { guard: "touchIsNamed", target: "open", actions: ["stateMayTouch", "forgetName"] },
          { actions: "refuseAnswerFirst" },
        ],
        "answer.yes": [
          { guard: "asksToTouch", target: "open", actions: ["stateNamed", "forgetName"] },
          { target: "open", actions: ["stateNamed", "passIfCounted", "forgetName", "walkOn"] },
        ],
        "answer.no": [
          { guard: "moreCandidates", actions: "askNext" },
          { guard: "asksToTouch", target: "open", actions: ["stateUnnamed", "forgetName"] },
          { target: "open", actions: ["stateUnnamed", "passIfCounted", "forgetName", "walkOn"] },
        ],
      },
    },
    /** Why is this step left out? */
    reason: {
      on: {
        "reason.given": { target: "open", actions: ["stateSkipped", "walkOn"] },
        "answer.no": { target: "open", actions: "stateHere" },
      },
    },
    /** Read back, and kept only on the phrase that is used nowhere else. */
    readBack: {
      initial: "close",
      states: {
        sharps: {
          on: {
            "answer.confirm": { target: "#session.conversation.open", actions: ["stateCountAgrees", "passCount"] },
            "answer.no": [
              {
                guard: "recountedBefore",
                target: "#session.conversation.naming",
                actions: ["stateCountDiffers", "askDiscrepancy"],
              },
              { actions: ["stateCountDiffers", "stateRecount"] },
            ],
            "step.back": { target: "#session.conversation.open", actions: "stateBack" },
            "report.undo": [
              { guard: "undoLooksSafer", target: "undo" },
              { guard: "canUndo", target: "#session.conversation.open", actions: ["stateUndone", "stateHere"] },
              { actions: "refuseNothingToUndo" },
            ],
          },
        },
        close: {
          on: {
            "answer.confirm": { target: "#session.conversation.open", actions: "keepClose" },
            "answer.no": { target: "#session.conversation.open" },
          },
        },
        undo: {
          on: {
            "answer.confirm": { target: "#session.conversation.open", actions: ["stateUndone", "stateHere"] },
            "answer.no": { target: "#session.conversation.open", actions: "countAgain" },
          },
        },
        /** "Needle: lot November two, use by the end of January. Right?" Another code held up takes its place. */
        lot: {
          on: {
            "answer.confirm": { target: "#session.conversation.open", actions: ["stateShownLot", "stateHere"] },
            "answer.no": { target: "#session.conversation.open", actions: "stateHere" },
            "lot.shown": [
              { guard: "isPastItsDay", target: "#session.conversation.open", actions: "stateCodeShown" },
              { actions: "stateCodeShown" },
            ],
            "code.wanted": {},
          },
        },
        exposureEnd: {
          on: {
            "answer.confirm": { target: "#session.conversation.open", actions: "endExposure" },
            "answer.no": { target: "#session.conversation.open" },
          },
        },
      },
    },
  },
});
