// The public interface: re-exports only, in the order of the flow.

// stats
export type { Count, Interval, NotEstimable } from "./stats/types.js";

// stats: one proportion
export { agrestiCoull } from "./stats/one-proportion/agresti-coull.js";
export { binomialTest, type BinomialTestResult } from "./stats/one-proportion/binomial-test.js";
export { blaker } from "./stats/one-proportion/blaker.js";
export { casesForWidth, type CasesForWidth } from "./stats/one-proportion/cases-for-width.js";
export { consecutiveSuccesses, type ConsecutiveSuccessesResult } from "./stats/one-proportion/consecutive-successes.js";
export { exactOneSided, type ExactOneSidedResult } from "./stats/one-proportion/exact-one-sided.js";
export {
  intervalCoverage,
  type MethodCoverage,
  type IntervalCoverageResult,
  type IntervalCoverageOptions,
} from "./stats/one-proportion/interval-coverage.js";
export { jeffreys } from "./stats/one-proportion/jeffreys.js";
export { likelihoodRatio } from "./stats/one-proportion/likelihood-ratio.js";
export { midP } from "./stats/one-proportion/mid-p.js";
export {
  nextCases,
  type Prior,
  type NextCasesResult,
  type NextCasesOptions,
} from "./stats/one-proportion/next-cases.js";
export { proportionIntervals, type ProportionMethod } from "./stats/one-proportion/proportion-intervals.js";
export { wald } from "./stats/one-proportion/wald.js";
export { waldContinuity } from "./stats/one-proportion/wald-continuity.js";
export { wilsonContinuity } from "./stats/one-proportion/wilson-continuity.js";
export { clopperPearson, type ClopperPearsonResult } from "./stats/clopper-pearson.js";
export { wilson, type WilsonResult } from "./stats/wilson.js";

// stats: two independent proportions
export { agrestiCaffo, type AgrestiCaffoResult } from "./stats/two-groups/agresti-caffo.js";
export { barnard, type BarnardResult } from "./stats/two-groups/barnard.js";
export { boschloo, type BoschlooConvention, type BoschlooResult } from "./stats/two-groups/boschloo.js";
export {
  chiSquareTwoGroups,
  type ChiSquareTest,
  type ChiSquareTwoGroupsResult,
} from "./stats/two-groups/chi-square-two-groups.js";
export {
  conditionalOddsRatio,
  type ConditionalLimits,
  type ConditionalOddsRatioResult,
} from "./stats/two-groups/conditional-odds-ratio.js";
export { conventionNote, type ConventionNote } from "./stats/two-groups/convention-note.js";
export {
  exactDifference,
  type ExactDifferenceMethod,
  type ExactDifferenceResult,
} from "./stats/two-groups/exact-difference.js";
export { fisherExact, type FisherExactResult } from "./stats/two-groups/fisher-exact.js";
export { katz, type KatzResult } from "./stats/two-groups/katz.js";
export { koopman, type KoopmanResult } from "./stats/two-groups/koopman.js";
export { miettinenNurminen, type MiettinenNurminenResult } from "./stats/two-groups/miettinen-nurminen.js";
export { newcombe, type NewcombeResult } from "./stats/two-groups/newcombe.js";
export { numberNeededToTreat, type NumberNeededToTreatResult } from "./stats/two-groups/number-needed-to-treat.js";
export { woolf, type WoolfResult } from "./stats/two-groups/woolf.js";

// stats: paired proportions
export { bowker, type BowkerResult } from "./stats/paired/bowker.js";
export { mcNemar, type McNemarResult } from "./stats/paired/mc-nemar.js";
export { newcombePaired, type NewcombePairedResult } from "./stats/paired/newcombe-paired.js";
export { orderedChange, type OrderedChangeResult } from "./stats/paired/ordered-change.js";
export { stuartMaxwell, type StuartMaxwellResult } from "./stats/paired/stuart-maxwell.js";
export { tango, type TangoResult } from "./stats/paired/tango.js";

// stats: trend over ordered groups
export { cochranArmitage, type CochranArmitageResult, type NoTrend } from "./stats/trend/cochran-armitage.js";
export { exactTrend, type ExactTrendResult, type ExactTrendTooLarge } from "./stats/trend/exact-trend.js";

// stats: tables of any size
export {
  fisherFreemanHalton,
  type ExactFreemanHaltonResult,
  type SimulatedFreemanHaltonResult,
  type NoFreemanHalton,
  type FreemanHaltonOptions,
} from "./stats/tables/fisher-freeman-halton.js";
export {
  jonckheereTerpstra,
  type JonckheereTerpstraResult,
  type NoJonckheereTerpstra,
} from "./stats/tables/jonckheere-terpstra.js";
export { kruskalWallis, type KruskalWallisResult, type NoKruskalWallis } from "./stats/tables/kruskal-wallis.js";
export { linearByLinear, type LinearByLinearResult, type NoLinearByLinear } from "./stats/tables/linear-by-linear.js";
export { tableChiSquare, type TableChiSquareResult, type NoTableChiSquare } from "./stats/tables/table-chi-square.js";

// stats: strata
export { breslowDay, type BreslowDayResult, type NoBreslowDay } from "./stats/strata/breslow-day.js";
export {
  exactCommonOddsRatio,
  type ExactCommonOddsRatioResult,
  type NoCommonOddsRatio,
} from "./stats/strata/exact-common-odds-ratio.js";
export {
  exactHomogeneity,
  type ExactHomogeneityResult,
  type NoExactHomogeneity,
} from "./stats/strata/exact-homogeneity.js";
export { generalisedCmh, type StratifiedTest, type GeneralisedCmhResult } from "./stats/strata/generalised-cmh.js";
export { groupOverlap, type GroupOverlapResult } from "./stats/strata/group-overlap.js";
export { mantelHaenszel, type MantelHaenszelResult } from "./stats/strata/mantel-haenszel.js";
export {
  standardisedProportion,
  type StandardisedProportionResult,
  type NoStandardisedProportion,
} from "./stats/strata/standardised-proportion.js";
export { woolfHomogeneity, type WoolfHomogeneityResult } from "./stats/strata/woolf-homogeneity.js";

// stats: several limbs of one child
export {
  clusteredWilson,
  type UsedCorrelation,
  type ClusteredWilsonResult,
} from "./stats/clustered/clustered-wilson.js";
export {
  correlationWithinChild,
  type CorrelationWithinChild,
  type CorrelationNotEstimable,
} from "./stats/clustered/correlation-within-child.js";
export { firstLimb, type FirstLimbResult } from "./stats/clustered/first-limb.js";
export { perChild, type ChildRule, type PerChildResult } from "./stats/clustered/per-child.js";
export { raoScott, type RaoScottResult } from "./stats/clustered/rao-scott.js";

// stats: many tests
export { benjaminiHochberg } from "./stats/many-tests/benjamini-hochberg.js";
export { hochberg } from "./stats/many-tests/hochberg.js";
export { holm } from "./stats/many-tests/holm.js";

// stats: agreement on grades
export { agreementWithin, type AgreementWithin } from "./stats/agreement/agreement-within.js";
export { cohenKappa, type KappaOptions, type KappaEstimate, type KappaResult } from "./stats/agreement/cohen-kappa.js";
export { compareKappas, type KappaComparison } from "./stats/agreement/compare-kappas.js";
export { congerKappa, type CongerEstimate, type CongerResult } from "./stats/agreement/conger-kappa.js";
export { crossTable, type GradeColumn, type CrossTable } from "./stats/agreement/cross-table.js";
export {
  disagreementWeights,
  type NamedWeights,
  type AgreementWeights,
} from "./stats/agreement/disagreement-weights.js";
export {
  fleissKappa,
  type FleissGrade,
  type FleissEstimate,
  type FleissResult,
} from "./stats/agreement/fleiss-kappa.js";
export { gwetAc, type GwetEstimate, type GwetResult } from "./stats/agreement/gwet-ac.js";
export { kappaAtPrevalence, type KappaAtPrevalence } from "./stats/agreement/kappa-at-prevalence.js";
export { kappaBootstrap, type KappaBootstrap } from "./stats/agreement/kappa-bootstrap.js";
export { kappaMaximum, type KappaMaximum } from "./stats/agreement/kappa-maximum.js";
export { kappaPermutation, type KappaPermutation } from "./stats/agreement/kappa-permutation.js";
export { krippendorffAlpha, type AlphaResult } from "./stats/agreement/krippendorff-alpha.js";
export { observerVariation, type Occasion, type ObserverVariation } from "./stats/agreement/observer-variation.js";
export { prevalenceBias, type GradePrevalenceBias, type PrevalenceBias } from "./stats/agreement/prevalence-bias.js";
export { raterPairs, type RaterPair, type RaterPairs } from "./stats/agreement/rater-pairs.js";
export {
  specificAgreement,
  type GradeAgreement,
  type SpecificAgreement,
} from "./stats/agreement/specific-agreement.js";

// stats: agreement on measurements
export {
  blandAltman,
  type BlandAltmanOptions,
  type LimitOfAgreement,
  type BlandAltman,
} from "./stats/measurement-agreement/bland-altman.js";
export { blandAltmanRepeated, type RepeatedBlandAltman } from "./stats/measurement-agreement/bland-altman-repeated.js";
export {
  intraclassCorrelation,
  type IccModel,
  type IccType,
  type IccUnit,
  type IccOptions,
  type IccEstimate,
  type IccResult,
} from "./stats/measurement-agreement/intraclass-correlation.js";
export {
  measurementError,
  type ErrorType,
  type MeasurementError,
} from "./stats/measurement-agreement/measurement-error.js";
export { proportionalBias, type ProportionalBias } from "./stats/measurement-agreement/proportional-bias.js";
export { withinSubjectSd, type WithinSubjectSd } from "./stats/measurement-agreement/within-subject-sd.js";

// stats: from measurement to grade
export {
  regradingChances,
  type ComparedWith,
  type RegradedCase,
  type ChangedCount,
  type RegradingChances,
} from "./stats/regrading/regrading-chances.js";
export { cutRoom } from "./stats/regrading/cut-room.js";
export { successUnderRegrading } from "./stats/regrading/success-under-regrading.js";

// stats: measurements
export { hodgesLehmannPaired, type HodgesLehmannPaired } from "./stats/measurements/hodges-lehmann-paired.js";
export { hodgesLehmannShift, type HodgesLehmannShift } from "./stats/measurements/hodges-lehmann-shift.js";
export { meanDifference, type MeanDifference } from "./stats/measurements/mean-difference.js";
export { medianInterval, type MedianInterval } from "./stats/measurements/median-interval.js";
export { pairedLoss, type PairedLoss } from "./stats/measurements/paired-loss.js";
export { pairedMeanDifference, type PairedMeanDifference } from "./stats/measurements/paired-mean-difference.js";
export { pairedPermutationTest, type PairedPermutationTest } from "./stats/measurements/paired-permutation-test.js";
export { permutationTest, type PermutationTest } from "./stats/measurements/permutation-test.js";
export { quartiles, type Quartiles } from "./stats/measurements/quartiles.js";
export { rankSum, type RankSum } from "./stats/measurements/rank-sum.js";
export { severalGroups, type SeveralGroups } from "./stats/measurements/several-groups.js";
export { signedRank, type ZeroTreatment, type SignedRank } from "./stats/measurements/signed-rank.js";

// stats: models
export { firthLogistic, type FirthLogistic } from "./stats/models/firth-logistic.js";
export { gradeCovariates, type GradeForm } from "./stats/models/grade-covariates.js";
export { limitCovariates, type CovariateLimit } from "./stats/models/limit-covariates.js";
export { logistic, type Logistic, type NoLogistic } from "./stats/models/logistic.js";

// stats: time and loss
export { followUp, type FollowUp } from "./stats/time/follow-up.js";
export { kaplanMeier, type SurvivalStep, type KaplanMeier } from "./stats/time/kaplan-meier.js";
export { logRank, type LogRank } from "./stats/time/log-rank.js";
export { logRankExact, type LogRankExact } from "./stats/time/log-rank-exact.js";
export { lossBounds, type LossBounds } from "./stats/time/loss-bounds.js";
export { numberAtRisk } from "./stats/time/number-at-risk.js";
export { solvePositive } from "./stats/time/solve-positive.js";
export { tippingGrid, type FollowedAndLost, type TippingCell, type TippingGrid } from "./stats/time/tipping-grid.js";

// stats: consecutive cases
export { caseOrderEffect, type CaseOrderEffect } from "./stats/sequence/case-order-effect.js";
export { cusumLimit, type CusumLimit } from "./stats/sequence/cusum-limit.js";
export { cusumRunLength, type CusumRunLength } from "./stats/sequence/cusum-run-length.js";
export { cusumSignalChance, type CusumSignalChance } from "./stats/sequence/cusum-signal-chance.js";
export { logLikelihoodScore } from "./stats/sequence/log-likelihood-score.js";
export {
  observedMinusExpected,
  type RiskedCase,
  type ObservedMinusExpected,
} from "./stats/sequence/observed-minus-expected.js";
export { riskAdjustedCusum, type RiskAdjustedCusum } from "./stats/sequence/risk-adjusted-cusum.js";
export { sequentialPlan, type SequentialPlan } from "./stats/sequence/sequential-plan.js";
export { sequentialVerdict, type SequentialVerdict } from "./stats/sequence/sequential-verdict.js";
export { tabularCusum, type TabularCusum } from "./stats/sequence/tabular-cusum.js";

// stats: resampling
export { bootstrap, type Bootstrap, type BootstrapOptions } from "./stats/resampling/bootstrap.js";

// stats: several series
export { betweenSeriesVariance, type VarianceMethod } from "./stats/series/between-series-variance.js";
export { heterogeneity, type Heterogeneity } from "./stats/series/heterogeneity.js";
export { leaveOneOut, type LeaveOneOut } from "./stats/series/leave-one-out.js";
export { logitEffects, type LogitEffect } from "./stats/series/logit-effects.js";
export { poolByGrade, type SeriesGrade, type PooledByGrade } from "./stats/series/pool-by-grade.js";
export { poolEffects, type PoolingMethod, type PooledEffects } from "./stats/series/pool-effects.js";
export { poolLogisticNormal, type PooledProportion } from "./stats/series/pool-logistic-normal.js";
export { predictionInterval } from "./stats/series/prediction-interval.js";
export { randomInterceptLogistic, type RandomInterceptLogistic } from "./stats/series/random-intercept-logistic.js";
export { restrictedVariance } from "./stats/series/restricted-variance.js";
export {
  seriesRates,
  type PublishedGrade,
  type PublishedSeries,
  type GradeMix,
  type SeriesRate,
  type StandardisedRate,
  type SeriesRates,
  type SeriesRatesResult,
} from "./stats/series/series-rates.js";

// stats: agreement-size
export { imagesForIcc, type ImagesForIcc } from "./stats/agreement-size/images-for-icc.js";
export { imagesForKappa, type ImagesForKappa } from "./stats/agreement-size/images-for-kappa.js";
export { simulateKappaWidth } from "./stats/agreement-size/simulate-kappa-width.js";

// stats: belief
export { betaByMoments, type BetaBelief, type BetaByMomentsResult } from "./stats/belief/beta-by-moments.js";
export { betaCurve, type CurvePoint } from "./stats/belief/beta-curve.js";
export { betaUpdate, type BeliefSummary, type BetaUpdateResult } from "./stats/belief/beta-update.js";

// stats: reported
export { differenceIntervals, type DifferenceIntervals } from "./stats/reported/difference-intervals.js";
export { halfAddedRatios, type HalfAddedRatios } from "./stats/reported/half-added-ratios.js";
export { intervalP, type IntervalP } from "./stats/reported/interval-p.js";
export { largeSampleTests, type LargeSampleTests } from "./stats/reported/large-sample-tests.js";
export { statisticP } from "./stats/reported/statistic-p.js";

// cases
export { readSheet } from "./cases/read-sheet.js";
export { readCases, type ReadCasesOptions } from "./cases/read-cases.js";
export { readAnswers } from "./cases/read-answers.js";
export { SheetError, type SheetIssue } from "./cases/sheet-error.js";
export type { Answers, CaseRow, CaseTable, Column, Question, RawSheet, Role, Value } from "./cases/types.js";

// plan
export { readPlan } from "./plan/read-plan.js";
export { checkPlan } from "./plan/check-plan.js";
export { draftPlan, type DraftedPlan } from "./plan/draft-plan.js";
export { planSql } from "./plan/plan-sql.js";
export { PlanError } from "./plan/plan-error.js";
export type { Plan, Rule, SuccessKind, Technique } from "./plan/types.js";

// ledger
export { buildLedger } from "./ledger/build-ledger.js";
export type { CaseCount, Denominator, Ledger, LedgerCase } from "./ledger/types.js";

// findings
export { findings, findingsOf, type FindingsOptions, type Provenance } from "./findings/findings.js";
export { countRows, type CountRow } from "./findings/count-rows.js";
export { mergeSmallCells } from "./findings/merge-small-cells.js";
export type { Findings, Rate } from "./findings/types.js";

// report
export { sections } from "./report/sections.js";
export { csvTable } from "./report/csv-table.js";
export { plainText, type Section, type TextTable } from "./report/text.js";

// claims
export { checkText, type CheckedText } from "./claims/check-text.js";
export type { Claim, ClaimKind, Light } from "./claims/claim.js";
export { reviewComments } from "./claims/review-comments.js";
