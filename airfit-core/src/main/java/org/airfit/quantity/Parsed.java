package org.airfit.quantity;

/** What the parser made of a text: a number and what its unit stands for. */
record Parsed<T>(double value, T unit) {}
