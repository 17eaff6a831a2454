package org.airfit.files;

import java.util.List;
import java.util.Objects;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.ReferenceSet;

/**
 * A reference set with the readings of the pieces it was measured on, as far as the file holds them.
 *
 * @param set the set
 * @param records the pieces of each profile with readings; the piece "no. 1" is the first reading of each dimension
 */
public record MeasuredSet(ReferenceSet set, List<KnownPlugs> records) {

  /**
   * Keeps a copy of the list.
   *
   * @param set the set
   * @param records the pieces of each profile with readings; the piece "no. 1" is the first reading of each dimension
   */
  public MeasuredSet {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(records, "records");
    records = List.copyOf(records);
  }
}
