package org.airfit.browser.lessons;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.lesson.Exercises;

/** The figures of all lessons. */
final class Lessons {

  private Lessons() {}

  /** The figures of one lesson. */
  static List<Figure> figures(int lesson) {
    return switch (lesson) {
      case 1 -> Lesson1.figures();
      case 2 -> Lesson2.figures();
      case 3 -> Lesson3.figures();
      case 4 -> Lesson4.figures();
      case 5 -> Lesson5.figures();
      case 6 -> Lesson6.figures();
      case 7 -> Lesson7.figures();
      case 8 -> Lesson8.figures();
      case 9 -> Lesson9.figures();
      case 10 -> Lesson10.figures();
      case 11 -> Lesson11.figures();
      case 12 -> Lesson12.figures();
      case 13 -> Lesson13.figures();
      default -> List.of();
    };
  }

  /** The figure of this name. */
  static Figure figure(String id) {
    return Stream.of(id)
        .flatMap(name -> figures(Exercises.lessonOf(name)).stream())
        .filter(figure -> figure.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no figure " + id));
  }
}
