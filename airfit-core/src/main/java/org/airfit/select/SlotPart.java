package org.airfit.select;

/** A part and the slot it takes. */
record SlotPart(Slot slot, Part part) {}
