package org.airfit.select;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.airfit.joint.End;
import org.jspecify.annotations.Nullable;

/**
 * Whether the material of a part suits the place, the knocks and the tool. A material that is not known may be any:
 * then the part suits if each does, does not if none does, and else somebody must be asked.
 *
 * <p>What is a hazard (a spark, a caustic cleaner, a plastic that a percussion tool shatters) is judged of every part.
 * Rust and knocks are judged of parts to buy only: what is there already is the customer's to wear out. All of it is
 * common practice, without a source; that caustic cleaners eat plain brass and aluminium is from memory.
 */
enum MaterialFit {
  /** It suits. */
  SUITS,
  /** It depends on something that was not told. */
  ASK,
  /** It does not suit. */
  OUT;

  private static final Set<Material> NO_RUST =
      Set.of(Material.STAINLESS_STEEL, Material.BRASS, Material.PLATED_BRASS);
  private static final Set<Material> OUTDOORS = Set.of(
      Material.STAINLESS_STEEL,
      Material.BRASS,
      Material.PLATED_BRASS,
      Material.PLATED_HARDENED_STEEL);
  private static final Set<Material> HARD =
      Set.of(Material.HARDENED_STEEL, Material.PLATED_HARDENED_STEEL, Material.STAINLESS_STEEL);
  private static final Set<Material> EATEN_BY_CAUSTIC = Set.of(Material.BRASS, Material.ALUMINIUM);

  /** Whether a part of that kind has a body of one material: no piping, and not a hose whose ends are both bare. */
  static boolean hasBody(Part part) {
    return !(part instanceof Part.Pipe)
        && !(part instanceof Part.Hose hose
            && hose.upstream() instanceof End.HoseEnd
            && hose.downstream() instanceof End.HoseEnd);
  }

  /** Whether the job asks anything of materials, as far as it was told. */
  static boolean isAsked(Requirement job) {
    return job.isImpactTool()
        || job.isDropped()
        || job.environment().filter(place -> place != Environment.INDOORS).isPresent();
  }

  /** How a part fits at its position. */
  static MaterialFit of(Requirement job, Position position, Part part) {
    MaterialFit body = hasBody(part) ? ofBody(job, position, part) : SUITS;
    MaterialFit wall = ofWall(job, part);
    return body.compareTo(wall) >= 0 ? body : wall;
  }

  /** How its body fits, of a hose its end fittings. */
  static MaterialFit ofBody(Requirement job, Position position, Part part) {
    @Nullable Material known = part.facts().material().orElse(null);
    if (known != null) {
      return of(job, position, part, known);
    }
    MaterialFit best = OUT;
    MaterialFit worst = SUITS;
    for (Material material : Material.values()) {
      MaterialFit one = of(job, position, part, material);
      best = best.compareTo(one) <= 0 ? best : one;
      worst = worst.compareTo(one) >= 0 ? worst : one;
    }
    if (best == worst) {
      return best;
    }
    return position.isCoupling() && !part.facts().isExisting() ? OUT : ASK;
  }

  private static MaterialFit of(Requirement job, Position position, Part part, Material material) {
    boolean wears = !part.facts().isExisting() && !stands(job, position.isCoupling(), material);
    return wears ? OUT : ofHazards(job, material);
  }

  /** Whether it stands the weather and the knocks. */
  static boolean stands(Requirement job, boolean isCoupling, Material material) {
    return (!job.isDropped() || !isCoupling || HARD.contains(material))
        && job.environment()
            .map(place -> switch (place) {
              case INDOORS, SPARKING_HAZARD -> true;
              case OUTDOORS -> OUTDOORS.contains(material);
              case SALT_AIR, WASH_DOWN, WASH_DOWN_WITH_WATER, WASH_DOWN_WITH_CAUSTIC ->
                NO_RUST.contains(material);
            })
            .orElse(true);
  }

  private static MaterialFit ofHazards(Requirement job, Material material) {
    if (job.isImpactTool() && material == Material.PLASTIC) {
      return OUT;
    }
    return job.environment()
        .map(place -> switch (place) {
          case INDOORS, OUTDOORS, SALT_AIR, WASH_DOWN_WITH_WATER -> SUITS;
          case SPARKING_HAZARD -> material == Material.BRASS ? SUITS : OUT;
          case WASH_DOWN -> EATEN_BY_CAUSTIC.contains(material) ? ASK : SUITS;
          case WASH_DOWN_WITH_CAUSTIC -> EATEN_BY_CAUSTIC.contains(material) ? OUT : SUITS;
        })
        .orElse(SUITS);
  }

  /**
   * How the wall of a hose fits: a percussion tool gets no plastic, and of a caustic cleaner only its maker knows
   * whether it stands that. Other parts have none.
   */
  static MaterialFit ofWall(Requirement job, Part part) {
    if (!(part instanceof Part.Hose hose)) {
      return SUITS;
    }
    MaterialFit shaken = job.isImpactTool()
        ? hose.conduit().wall().map(wall -> wall.isPlastic() ? OUT : SUITS).orElse(ASK)
        : SUITS;
    return shaken == SUITS && isCaustic(job) ? ASK : shaken;
  }

  /** Whether it is washed down with a caustic cleaner. */
  static boolean isCaustic(Requirement job) {
    return job.environment().filter(Environment.WASH_DOWN_WITH_CAUSTIC::equals).isPresent();
  }

  /** The materials of which a new part may be, a coupling or another, those that depend among them. */
  static Set<Material> good(Requirement job, boolean isCoupling) {
    Set<Material> good = EnumSet.noneOf(Material.class);
    for (Material material : List.of(Material.values())) {
      if (stands(job, isCoupling, material) && ofHazards(job, material) != OUT) {
        good.add(material);
      }
    }
    return Collections.unmodifiableSet(good);
  }
}
