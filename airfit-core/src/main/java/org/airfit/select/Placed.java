package org.airfit.select;

/** A part and the place it takes. */
record Placed(Position position, Part part) {}
