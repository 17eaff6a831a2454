package org.airfit.counter.stock;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** What is answered to somebody who wants pieces held. */
public sealed interface ReserveAnswer {

  /**
   * Handles each answer.
   *
   * @param <T> what comes of it
   * @param held all pieces are held
   * @param tooFew nothing is held, for some pieces are missing
   * @param taken nothing is held, for the reference belongs to another reservation
   * @return what the function of this answer returns
   */
  <T> T fold(
      Function<? super Held, ? extends T> held,
      Function<? super TooFew, ? extends T> tooFew,
      Function<? super ReferenceTaken, ? extends T> taken);

  /**
   * All pieces are held.
   *
   * @param reservation the reservation
   * @param isNew whether it was made now; if not, the same was asked before
   */
  record Held(Reservation reservation, boolean isNew) implements ReserveAnswer {

    /**
     * Refuses what is null.
     *
     * @param reservation the reservation
     * @param isNew whether it was made now; if not, the same was asked before
     */
    public Held {
      Objects.requireNonNull(reservation, "reservation");
    }

    @Override
    public <T> T fold(
        Function<? super Held, ? extends T> held,
        Function<? super TooFew, ? extends T> tooFew,
        Function<? super ReferenceTaken, ? extends T> taken) {
      return held.apply(this);
    }
  }

  /**
   * Nothing is held, for some pieces are missing.
   *
   * @param shortages what is missing, one at least
   */
  record TooFew(List<Shortage> shortages) implements ReserveAnswer {

    /**
     * Copies the list.
     *
     * @param shortages what is missing, one at least
     */
    public TooFew {
      shortages = List.copyOf(Objects.requireNonNull(shortages, "shortages"));
    }

    @Override
    public <T> T fold(
        Function<? super Held, ? extends T> held,
        Function<? super TooFew, ? extends T> tooFew,
        Function<? super ReferenceTaken, ? extends T> taken) {
      return tooFew.apply(this);
    }
  }

  /**
   * Nothing is held, for the reference belongs to another reservation.
   *
   * @param other that reservation
   */
  record ReferenceTaken(Reservation other) implements ReserveAnswer {

    /**
     * Refuses what is null.
     *
     * @param other that reservation
     */
    public ReferenceTaken {
      Objects.requireNonNull(other, "other");
    }

    @Override
    public <T> T fold(
        Function<? super Held, ? extends T> held,
        Function<? super TooFew, ? extends T> tooFew,
        Function<? super ReferenceTaken, ? extends T> taken) {
      return taken.apply(this);
    }
  }

  /**
   * An article of which there are too few.
   *
   * @param number its number
   * @param wanted how many pieces are wanted
   * @param available how many could be held; empty where there is no such article
   */
  record Shortage(String number, int wanted, Optional<Integer> available) {

    /**
     * Refuses what is null.
     *
     * @param number its number
     * @param wanted how many pieces are wanted
     * @param available how many could be held; empty where there is no such article
     */
    public Shortage {
      Objects.requireNonNull(number, "number");
      Objects.requireNonNull(available, "available");
    }
  }
}
