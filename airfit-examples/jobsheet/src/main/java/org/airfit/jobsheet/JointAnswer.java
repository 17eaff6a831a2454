package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.Seal;
import org.airfit.joint.StandardAdapter;
import org.airfit.safety.Caution;

/**
 * Whether two ends go together, what goes between them where they do not, and what is bought for it.
 *
 * @param mating how they go together as they are
 * @param chain what joins them
 * @param remarks how an end was read that may be meant otherwise
 */
public record JointAnswer(Mating mating, Chain<StandardAdapter> chain, List<String> remarks) {

  /** What an adapter must be asked for. */
  static final String ASK_OF_ADAPTER =
      "The adapter must be rated for the pressure and suit the place: ask its maker. Its bore narrows the way.";

  /**
   * Copies the list; refuses what is null.
   *
   * @param mating how they go together as they are
   * @param chain what joins them
   * @param remarks how an end was read that may be meant otherwise
   */
  public JointAnswer {
    Objects.requireNonNull(mating, "mating");
    Objects.requireNonNull(chain, "chain");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
  }

  /**
   * Judges two ends.
   *
   * @param one an end as people write it, such as "1/2 NPT male"
   * @param other the other end
   * @return the answer
   * @throws org.airfit.quantity.QuantityFormatException if a text is no end
   */
  public static JointAnswer of(String one, String other) {
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    List<String> remarks = new ArrayList<>();
    for (String typed : List.of(one, other)) {
      End.remarkOn(typed).ifPresent(remark -> remarks.add(typed.strip() + ": " + remark + "."));
    }
    return new JointAnswer(mating, Chain.between(mating.one(), mating.other()), remarks);
  }

  /** {@return whether they can be joined at all, with adapters or without} */
  public boolean isJoined() {
    return chain.verdict() != ChainVerdict.NOT_JOINED;
  }

  /** {@return what must be asked of the adapters; empty where there are none} */
  public List<String> toAsk() {
    return chain.adapters().isEmpty() ? List.of() : List.of(ASK_OF_ADAPTER);
  }

  /**
   * {@return what is bought for the joints beside the parts; one roll or tube of sealant does for all joints; "nothing"
   * where nothing is}
   */
  public String toBuy() {
    Map<String, Integer> items = new LinkedHashMap<>();
    for (Mating joint : chain.matings()) {
      boolean isSealant =
          joint.seal().filter(seal -> seal == Seal.THREAD_SEALANT).isPresent();
      joint
          .sealItem()
          .ifPresent(item -> items.merge(item, 1, isSealant ? Math::max : Integer::sum));
      joint.retainer().ifPresent(item -> items.merge(item, 1, Integer::sum));
    }
    return items.isEmpty()
        ? "nothing"
        : items.entrySet().stream()
            .map(item -> (item.getValue() == 1 ? "" : item.getValue() + " × ") + item.getKey())
            .collect(Collectors.joining("; "));
  }

  /** {@return every caution of the joints once} */
  public List<Caution> cautions() {
    Set<Caution> cautions = new LinkedHashSet<>(mating.cautions());
    if (!chain.adapters().isEmpty()) {
      chain.matings().forEach(joint -> cautions.addAll(joint.cautions()));
      cautions.addAll(chain.cautions());
    }
    return List.copyOf(cautions);
  }
}
