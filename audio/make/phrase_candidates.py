"""Words that were tried for the phrase list beside those that are in it. phrase_trial.py measures them; PHRASES.md tells the choice."""

ADDRESS = ("station;workbench;companion;studio;parlour;gallery;lantern;assistant;counter;trolley;umbrella;harbour;balcony;cabinet;"
           "okay bench;colleague;helper").split(";")
COMMANDS = ("may I handle this;am I allowed to touch;permission to touch;camera please;scan the packet;read the barcode;"
            "enough talking;be quiet now;stop the voice;give me the options;what can I say;list my choices").split(";")
