package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * What could be asked: a subject, with the job of the tool it is asked of.
 *
 * @param subject what is asked
 * @param of the job of the tool that it is asked of, or the whole job
 */
record OpenSubject(Subject subject, Requirement of) {

  /** What was not asked, and the job does not tell. */
  static List<OpenSubject> of(Requirement job, ToldSoFar told) {
    List<OpenSubject> open = new ArrayList<>();
    for (Topic topic : Topic.values()) {
      if (topic == Topic.REACH) {
        hosesInDoubt(job, told)
            .forEach(hose -> open.add(new OpenSubject(Subject.of(topic, hose.name()), job)));
      } else if (topic.isOfPart()) {
        slotsThere(topic, job)
            .forEach(name -> open.add(new OpenSubject(Subject.of(topic, name), job)));
      } else if (topic == Topic.SETTING) {
        if (!job.settingRange().isExact()) {
          open.add(new OpenSubject(Subject.ofJob(topic), job));
        }
        regulatorsInDoubt(job)
            .forEach(each -> open.add(new OpenSubject(Subject.of(topic, each.name()), job)));
      } else if (topic == Topic.REGULATOR_DROOP) {
        if (!job.droopRange().isExact()) {
          open.add(new OpenSubject(Subject.ofJob(topic), job));
        }
        regulatorsOfUnknownDroop(job)
            .forEach(each -> open.add(new OpenSubject(Subject.of(topic, each.name()), job)));
      } else if (job.isOfSeveralTools() && topic.isOfTool()) {
        for (Requirement way : job.toEachTool()) {
          if (isUntold(topic, way)) {
            open.add(new OpenSubject(Subject.of(topic, way.way().orElseThrow()), way));
          }
        }
      } else if (isUntold(topic, job)) {
        open.add(new OpenSubject(Subject.ofJob(topic), job));
      }
    }
    open.removeIf(each -> told.isAsked(each.subject()));
    return open;
  }

  /** The hoses of which it is not known exactly how far they must reach, unless the customer was asked already. */
  private static List<Slot.Hose> hosesInDoubt(Requirement job, ToldSoFar told) {
    return told.isAsked(Subject.ofJob(Topic.REACH))
        ? List.of()
        : job.layout().allSlots().stream()
            .filter(Slot.Hose.class::isInstance)
            .map(Slot.Hose.class::cast)
            .filter(hose -> !hose.reachRange().isExact())
            .toList();
  }

  /** The slots of which something is not known exactly of the part that is there, or of the air that others take. */
  private static List<String> slotsThere(Topic topic, Requirement job) {
    return job.layout().allSlots().stream()
        .filter(slot -> isUntold(topic, slot))
        .map(Slot::name)
        .toList();
  }

  private static boolean isUntold(Topic topic, Slot slot) {
    if (topic == Topic.AIR_OF_OTHERS) {
      return slot instanceof Slot.Splitter splitter
          && splitter.others().filter(air -> !air.isExact()).isPresent();
    }
    return PartThere.of(topic, slot)
        .filter(part -> switch (topic) {
          case HOSE_BORE ->
            part instanceof Part.Hose hose
                && !hose.widestBore().equals(hose.conduit().bore());
          case HOSE_LENGTH ->
            part instanceof Part.Hose hose && !hose.shortest().equals(hose.longest());
          default -> part.facts().rating().isEmpty();
        })
        .isPresent();
  }

  /** The regulators of the layout of which it is not known exactly what they are set to. */
  private static List<Slot.Regulated> regulatorsInDoubt(Requirement job) {
    return regulators(job).filter(regulated -> !regulated.setRange().isExact()).toList();
  }

  /**
   * The regulators that are there and of which it is not known exactly by how much they droop; of one that is to be
   * chosen its maker must tell it, and behind the end of a curve no gauge shows what the curve would.
   */
  private static List<Slot.Regulated> regulatorsOfUnknownDroop(Requirement job) {
    return regulators(job)
        .filter(regulated ->
            regulated.regulator().filter(there -> !there.droopRange().isExact()).isPresent())
        .toList();
  }

  private static Stream<Slot.Regulated> regulators(Requirement job) {
    return job.layout().allSlots().stream()
        .filter(Slot.Regulated.class::isInstance)
        .map(Slot.Regulated.class::cast);
  }

  /** Whether a job does not tell this yet, and could. */
  private static boolean isUntold(Topic topic, Requirement job) {
    boolean isRegulated = job.pressures().whileRegulated().isPresent();
    return switch (topic) {
      case MEDIUM -> true;
      case AIR_NEEDED,
          PRESSURE_NEEDED,
          TOOL_INLET,
          SUPPLY,
          OUTLET,
          REACH,
          SETTING,
          REGULATOR_DROOP,
          HOSE_BORE,
          HOSE_LENGTH,
          AIR_OF_OTHERS,
          HOSE_RATING,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING -> false;
      case DUTY -> isDutyOpen(job);
      case EXACT_AIR -> !job.demandRange().isExact() && !isDutyOpen(job);
      case EXACT_PRESSURE -> !job.leastRange().isExact();
      case DRYER -> BillExtras.asksForDryer(job);
      case USE ->
        !job.isImpactTool()
            && job.cleaningDeadEnd().isEmpty()
            && !job.isPainting()
            && !job.isBlasting()
            && !job.isAutomaticFeed();
      case WHIP_HOSE -> job.isImpactTool() && !job.isWhipHoseTold();
      case BLOCKED_NOZZLE -> job.cleaningDeadEnd().isPresent() && !job.isDeadEndTold();
      case TOOL_RATING -> job.toolRating().isEmpty();
      case HIGHEST -> !job.isHighestTold() && !job.isCutOutTold();
      case RELIEF_VALVE -> !job.isHighestTold() && job.isCutOutTold();
      case REGULATOR -> !isRegulated && job.pressures().regulated().isWhole();
      case REGULATOR_FAILED -> isRegulated && !job.isFailureTold();
      case PLACE -> job.environment().isEmpty();
      case CLEANER -> job.environment().filter(Environment.WASH_DOWN::equals).isPresent();
      case AIR -> job.lubrication().isEmpty();
      case DROPPED -> !job.isDropped();
      case DRAGGED -> !job.isDragged();
      case VENTED -> !job.isVentRequired();
      case PROFILE -> job.profile().isEmpty();
      case PROFILES_IN_USE -> job.profilesInUse().isEmpty();
      case COLDEST -> job.coldest().isEmpty();
      case HOTTEST -> job.hottest().isEmpty();
    };
  }

  /** Whether what a tool takes is an average over a share of the time that is not known exactly. */
  private static boolean isDutyOpen(Requirement job) {
    return job.average().isPresent()
        && !job.demandRange().isExact()
        && Turns.domain(Topic.DUTY, job).isOpen();
  }
}
