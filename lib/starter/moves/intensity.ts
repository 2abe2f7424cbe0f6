/**
 * Where the library's MET values come from. The Compendium has no code for work on a spring-resistance sliding carriage, so
 * each mapping below is a judgement, made once here. Values: Compendium of Physical Activities, 2024 adult edition
 * (Herrmann et al., J Sport Health Sci 13(1):6-12), with the 2011 edition (Ainsworth et al., Med Sci Sports Exerc
 * 43(8):1575-1581) where the two agree. METs are averages of groups, not a reading of one person.
 */
export const MET = {
  /** 02101 stretching, mild. */
  stretch: 2.3,
  /** 02024 calisthenics, light; the 2024 edition names the plank here. */
  lightBodyweight: 2.8,
  /** 02056 body-weight resistance exercises, general (2024 only). */
  bodyweight: 3.0,
  /** 02054 resistance training, several exercises, 8-15 repetitions. */
  resistance: 3.5,
  /** 02022 calisthenics, moderate: push-ups, lunges. */
  moderateBodyweight: 3.8,
  /** 02052 resistance training, squats, slow or explosive. */
  squats: 5.0,
} as const;
