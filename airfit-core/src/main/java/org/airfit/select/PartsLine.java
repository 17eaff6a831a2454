package org.airfit.select;

/**
 * One line of a parts list.
 *
 * @param part the part
 * @param quantity how many of it
 * @param alreadyThere whether the customer has it and it need not be bought
 * @param reason why it is on the list, in plain words
 */
public record PartsLine(Part part, int quantity, boolean alreadyThere, String reason) {}
