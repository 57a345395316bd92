// biome-ignore-all assist/source/organizeImports: a contents page, in the order of the work
// What Seamwright offers to other programs, step by step. All of it runs in a browser as well.

// The whole way: a block and a dressing in, color stops out.
export {
  type Dressed,
  type DressedLayer,
  type DressedLine,
  type DressedOrnament,
  dress,
  marksOf,
} from './dress.js';
export { defaultDressing, type PlanOptions } from './plan.js';
export { type Mixed, type MixOptions, mixDressing } from './harmony/mix.js';
export { PALETTE } from './harmony/palette.js';
export { type Finding, type Level, worstFirst } from './finding.js';
export { InputError } from './input-error.js';

// Blocks: drawings and stitch files to seam maps.
export type { Block } from './block/block.js';
export { readSvgBlock } from './block/read-drawing.js';
export { readSewnBlock, readStitchBlock } from './block/read-stitch-file.js';
export { recognizeStops } from './block/roles/recognize.js';
export { type Recognized, ROLE_NAMES, ROLES, type Role, type StopRole } from './block/roles/role.js';
export type { Junction, Outline, Patch, Seam, SeamMap } from './block/seam-map.js';
export { type SeamsJson, seamsJson } from './block/seams-json.js';

// Stitches.
export type { Dictionary } from './stitches/dictionary.js';
export { findNamed } from './stitches/find-named.js';
export { parseOrnament, parseStitch } from './stitches/parse.js';
export { parseTreatment, type SavedTreatment } from './formats/treatment.js';
export type { Figure, Ornament, Parameter, Stitch, Unit, UnitLeg, Values } from './stitches/stitch.js';

// Saved work.
export type {
  Accent,
  Dressing,
  Laid,
  PlacedOrnament,
  Row,
  ThreadChoice,
  Treatment,
  Work,
} from './formats/dressing.js';
export { readDressing, writeDressing } from './formats/dressing-file.js';

// Fits, runs of needle points, designs.
export type { Chain, Layer, Mark, SeamFit, Stretch } from './fit/fit.js';
export type { Craft, Runs } from './needle/run.js';
export type { Design, Stop, Thread } from './design/design.js';
export { type Account, account } from './design/account.js';
export { needlePoints } from './design/needle-points.js';
export { writeDesign } from './design/write-design.js';

// Stitch files as they stand.
export { readDst } from './formats/dst-read.js';
export { type FileStop, stopsOf } from './formats/stops.js';
export type { StitchFile } from './formats/stitch-file.js';

// Density, lengths and what is said of them.
export { type Density, density } from './check/density/density.js';
export type { Measured } from './check/density/total.js';
export { type Cloth, type DensityLimits, LIMITS } from './check/density/limits.js';
export { type SewnStitches, stitchesOf, stitchesOfRecords } from './check/density/sewn-stitches.js';
export { type Examined, examineRecords } from './check/examine.js';
export { limitsAsked } from './density-limits.js';
export { examineDressed } from './examine-dressed.js';

// Threads against fabrics and against each other.
export { contrast } from './color/contrast.js';
export { type Difference, loadDifference } from './color/difference.js';
export type { Fabric } from './color/fabric.js';
export { pictureFabric } from './color/picture-fabric.js';
export { readPicture } from './formats/picture.js';
export { type ThreadLook, threadLook } from './thread-look.js';

// Pictures and reports.
export { drawDressed } from './draw/dressed-picture.js';
export { drawStops } from './draw/stops-picture.js';
export { drawOverlays } from './draw/overlays/overlay-picture.js';
export { SHOWN, type Shown } from './draw/overlays/show.js';
export type { ShownWork } from './draw/overlays/shown-work.js';
export { workOfDressed } from './draw/overlays/work-of-dressed.js';
export { workOfFile } from './draw/overlays/work-of-file.js';
export { drawSeamMap } from './draw/map-picture.js';
export type { Pen } from './draw/pen.js';
export { sampleBlock } from './draw/swatch.js';
export { type CheckReport, checkReport, checkText } from './report/check-report.js';
export { type ContrastReport, contrastReport } from './report/contrast-report.js';
export { type DressReport, dressReport } from './report/dress-report.js';
export { dressText } from './report/dress-text.js';
export { seamsText } from './report/seams-text.js';

// Printed sheets.
export { type Paper, newPaper } from './sheet/paper.js';
export { type SheetAsk, type SheetTold, sewSheet } from './sheet/sew-sheet.js';
export { mirrored } from './sheet/pattern/mirrored.js';
export type { Pattern } from './sheet/pattern/pattern.js';
export { patternOf } from './sheet/pattern/pattern-of.js';
export { patternPdf } from './sheet/pattern/pattern-pdf.js';
export { patternSvg } from './sheet/pattern/pattern-svg.js';
