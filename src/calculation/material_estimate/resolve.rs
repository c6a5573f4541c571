//! From a request to its typed quantities: every field is checked, every default taken and noted.

use uom::si::f64::Ratio;
use uom::si::ratio::percent;

use super::productivity::ResolvedProductivity;
use super::request::{BackerRod, MaterialEstimateRequest, Productivity, Saw};
use super::resolve_loops::{LaidLoops, check_unused_slot, given_constructions, resolve_lead_in_slot, resolve_loops};
use super::resolved::{
    ResolvedAgencyMinimum, ResolvedBackerRod, ResolvedMaterialEstimate, ResolvedSaw, ResolvedSealant,
    ResolvedWireSpool, slot_allowance,
};
use crate::calculation::input::{
    CartridgeVolume, ResolvedPrices, ResolvedSlot, ResolvedStockItem, Sealant, Slab, price_keys,
};
use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::burial::{Burial, LoopBed};
use crate::practice::materials::{
    BURIAL_TIME, CLEANING_SPEED, CORE_TIME, Corner, MaterialItem, PULL_TIME, RodForm, SEALING_SPEED, SET_UP_TIME,
    TERMINATION_TIME, TEST_TIME, USUAL_BLADE, USUAL_BLADE_LIFE, USUAL_CARTRIDGE, USUAL_CORE, USUAL_FINISH,
    USUAL_ROD_PIECE, USUAL_ROD_SPACING, USUAL_WASTE_PERCENT, USUAL_WIRE_ALLOWANCE_PERCENT,
};
use crate::practice::sealants::SealantKind;
use crate::practice::site::{Construction, Surface};
use crate::practice::sources::Source;
use crate::quantity::QuantityField;
use crate::vocabulary::Vocabulary;

/// Resolves the request, with its own loops or with those of a layout; `None` where something of it is wrong, which is noted.
pub fn resolve(
    request: &MaterialEstimateRequest,
    laid: Option<LaidLoops<'_>>,
    diagnostics: &mut Diagnostics,
) -> Option<ResolvedMaterialEstimate> {
    let body = FieldPath::BODY;
    let surface = diagnostics.value_or_default(
        &body.field("surface"),
        request.surface,
        (Surface::ExistingAsphalt, Surface::ExistingAsphalt.code()),
        Statement::new("input-usual-surface"),
        Source::OwnChoice,
    );
    let constructions = given_constructions(request, laid);
    let is_sawn = has_saw_cut(&constructions, surface);
    let saw = resolve_if_needed(is_sawn, &body.field("saw"), request.saw.as_ref(), diagnostics, resolve_saw);
    let agency_at = body.field("agency_minimum");
    let agency = request.agency_minimum.as_ref().map(|sent| {
        let width = resolve_if_needed(is_sawn, &agency_at, Some(sent), diagnostics, |_, at, diagnostics| {
            diagnostics.parse(&at.field("slot_width"), &sent.slot_width)
        });
        Some(ResolvedAgencyMinimum { name: sent.agency.clone(), slot_width: width?.si })
    });
    let agency_width = agency.as_ref().and_then(|agency| Some(agency.as_ref()?.slot_width)).unwrap_or_default();
    let loops = resolve_loops(request, laid, surface, agency_width, diagnostics);
    check_unused_slot(request, diagnostics);
    let (lead_in_slot_at, sealant_at) = (body.field("lead_in_slot"), body.field("sealant"));
    let lead_in_slot =
        resolve_if_needed(is_sawn, &lead_in_slot_at, request.lead_in_slot.as_ref(), diagnostics, resolve_lead_in_slot);
    let sealant = resolve_if_needed(is_sawn, &sealant_at, request.sealant.as_ref(), diagnostics, resolve_sealant);
    let rod_at = body.field("backer_rod");
    let rod = resolve_if_needed(is_sawn, &rod_at, request.backer_rod.as_ref(), diagnostics, resolve_backer_rod);
    let spools = resolve_spools(request, &body.field("wire_spools"), diagnostics);
    let waste_at = body.field("waste_percent");
    let waste =
        resolve_if_needed(is_sawn, &waste_at, request.waste_percent.as_ref(), diagnostics, |sent, at, diagnostics| {
            let usual = (USUAL_WASTE_PERCENT, "10");
            let reason = Statement::new("materials-usual-waste");
            diagnostics.value_or_default(at, sent.copied(), usual, reason, Source::OwnChoice)
        });
    // In a form the loop is tied over the steel.
    let is_tied = Burial::in_surface(surface).bed == LoopBed::TiedInForm;
    let has_steel = request.slab.as_ref().is_some_and(|slab| slab.reinforcement_depth.is_some());
    let needs_slab = is_sawn || is_tied && has_steel;
    let slab = resolve_if_needed(needs_slab, &body.field("slab"), request.slab.as_ref(), diagnostics, Slab::resolve);
    let productivity = resolve_productivity(request.productivity.as_ref(), &body.field("productivity"), diagnostics);
    mark_unneeded_productivity(request, &constructions, surface, diagnostics);
    check_skus(request, diagnostics);
    let stock_at = body.field("stock");
    let stock: Option<Vec<_>> = request.stock.as_ref().map(|stock| {
        stock.iter().enumerate().filter_map(|(index, item)| item.resolve(&stock_at.item(index), diagnostics)).collect()
    });
    let prices = resolve_prices(request, stock.as_deref(), diagnostics);
    let spools = spools.map(|spools| price_spools(spools, prices.as_ref().ok().and_then(Option::as_ref)));
    let is_wound = surface.allows(Construction::HandWound)
        || constructions.iter().any(|given| !given.unwrap_or(surface.usual_construction()).is_preformed());
    let allowance_at = body.field("wire_allowance_percent");
    let sent = request.wire_allowance_percent.as_ref();
    let allowance = resolve_if_needed(is_wound, &allowance_at, sent, diagnostics, |sent, at, diagnostics| {
        let usual = (USUAL_WIRE_ALLOWANCE_PERCENT, "5");
        let reason = Statement::new("materials-usual-allowance");
        diagnostics.value_or_default(at, sent.copied(), usual, reason, Source::OwnChoice)
    });
    Some(ResolvedMaterialEstimate {
        loops: loops?,
        lead_in_slot,
        saw: saw?,
        sealant: sealant?,
        rod: rod?,
        rod_is_asked: request.backer_rod.is_some(),
        spools: spools?,
        wire_allowance: Ratio::new::<percent>(allowance),
        waste: Ratio::new::<percent>(waste),
        surface,
        slab,
        hazards: request.site_hazards.clone().unwrap_or_default(),
        crossings: request.crossings.unwrap_or_default(),
        agency: agency.map_or(Some(None), |agency| agency.map(Some))?,
        prices: prices.ok()?,
        productivity: productivity?,
        stock,
        needs_line_device: laid.is_some_and(|laid| laid.layout.needs_line_device),
    })
}

/// What the slot of a plan's loops holds beside them and how wide an agency wants it, so that the sizing decides with it.
pub fn fill_slot(request: &MaterialEstimateRequest, construction: Construction, slot: &mut ResolvedSlot) {
    let (at, mut aside) = (FieldPath::BODY, Diagnostics::default());
    let agency = request.agency_minimum.as_ref().and_then(|agency| agency.slot_width.read().ok());
    if let Some(agency) = agency.filter(|_| request.slot.as_ref().is_none_or(|slot| slot.width.is_none())) {
        slot.width = slot.width.max(agency.si);
    }
    let sealant = resolve_sealant(request.sealant.as_ref(), &at, &mut aside);
    let rod = resolve_backer_rod(request.backer_rod.as_ref(), &at, &mut aside);
    let slab = Slab::resolve(request.slab.as_ref(), &at, &mut aside);
    // What cannot be read is refused with the estimate.
    if let (Some(sealant), Some(rod)) = (sealant, rod) {
        slot.allowance = slot_allowance(&sealant, &rod, &slab, construction, slot.width);
    }
}

/// Resolves a part of the request. Where the job has no need of it, only its errors count, and what was sent of it is unused.
fn resolve_if_needed<S: ?Sized, T>(
    is_needed: bool,
    at: &FieldPath<'_>,
    sent: Option<&S>,
    diagnostics: &mut Diagnostics,
    resolve: impl FnOnce(Option<&S>, &FieldPath<'_>, &mut Diagnostics) -> T,
) -> T {
    if is_needed {
        return resolve(sent, at, diagnostics);
    }
    let mut unneeded = Diagnostics::default();
    let resolved = resolve(sent, at, &mut unneeded);
    diagnostics.append_errors(&mut unneeded);
    if sent.is_some() {
        diagnostics.mark_unused(at);
    }
    resolved
}

fn resolve_saw(saw: Option<&Saw>, at: &FieldPath<'_>, diagnostics: &mut Diagnostics) -> Option<ResolvedSaw> {
    let blade = diagnostics.parse_or_default(
        &at.field("blade_diameter"),
        saw.and_then(|saw| saw.blade_diameter.as_ref()),
        USUAL_BLADE,
        Statement::new("materials-usual-blade"),
        Source::CommonPractice,
    );
    let core_sent = saw.and_then(|saw| saw.core_diameter.as_ref());
    let corner = saw.and_then(|saw| saw.corner);
    let core = diagnostics.parse_or_default(
        &at.field("core_diameter"),
        core_sent,
        USUAL_CORE,
        Statement::new("materials-usual-core"),
        Source::OwnChoice,
    );
    let blade_life = diagnostics.parse_or_default(
        &at.field("blade_life"),
        saw.and_then(|saw| saw.blade_life.as_ref()),
        USUAL_BLADE_LIFE,
        Statement::new("materials-usual-blade-life"),
        Source::OwnChoice,
    );
    if !corner.is_some_and(Corner::is_cored) {
        diagnostics.mark_unneeded(at, &[("core_diameter", core_sent.is_some())]);
    }
    Some(ResolvedSaw {
        blade: blade?,
        corner,
        core: core?,
        blade_life: blade_life?,
        owns_blades: saw.and_then(|saw| saw.owns_blades).unwrap_or(false),
    })
}

fn resolve_sealant(
    sealant: Option<&Sealant>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<ResolvedSealant> {
    let kind = diagnostics.value_or_default(
        &at.field("kind"),
        sealant.map(|sealant| sealant.kind),
        (SealantKind::DEFAULT, SealantKind::DEFAULT.code()),
        Statement::new("input-usual-sealant"),
        Source::CommonPractice,
    );
    let cartridge_sent = sealant.and_then(|sealant| sealant.cartridge.as_ref());
    let cartridge = diagnostics.parse_or_default::<CartridgeVolume>(
        &at.field("cartridge"),
        cartridge_sent,
        USUAL_CARTRIDGE,
        Statement::new("materials-usual-cartridge"),
        Source::CommonPractice,
    );
    if kind.is_poured_hot() {
        diagnostics.mark_unneeded(at, &[("cartridge", cartridge_sent.is_some())]);
    }
    let finish = diagnostics.parse_or_default(
        &at.field("finish_below_surface"),
        sealant.and_then(|sealant| sealant.finish_below_surface.as_ref()),
        USUAL_FINISH,
        Statement::new("materials-usual-finish"),
        Source::Everett,
    );
    if let Some(sealant) = sealant {
        sealant.check_cure_fields(at, diagnostics);
    }
    let pour = Sealant::read_sheet(sealant, kind, at, diagnostics).pour;
    Some(ResolvedSealant { kind, cartridge: cartridge?, finish: finish?, pour })
}

fn resolve_backer_rod(
    rod: Option<&BackerRod>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<ResolvedBackerRod> {
    let form = diagnostics.value_or_default(
        &at.field("form"),
        rod.map(|rod| rod.form),
        (RodForm::Pieces, RodForm::Pieces.code()),
        Statement::new("materials-usual-rod-form"),
        Source::CommonPractice,
    );
    let piece_sent = rod.and_then(|rod| rod.piece_length.as_ref());
    let spacing_sent = rod.and_then(|rod| rod.spacing.as_ref());
    let (piece_at, spacing_at) = (at.field("piece_length"), at.field("spacing"));
    let (reason, source) = (Statement::new("materials-agency-asks"), Source::Everett);
    let piece = diagnostics.parse_or_default(&piece_at, piece_sent, USUAL_ROD_PIECE, reason.clone(), source);
    let spacing = diagnostics.parse_or_default(&spacing_at, spacing_sent, USUAL_ROD_SPACING, reason, source);
    let diameter = rod.and_then(|rod| rod.diameter.as_ref());
    let diameter = diameter.map(|text| diagnostics.parse(&at.field("diameter"), text));
    if !form.is_in_pieces() {
        diagnostics.mark_unneeded(at, &[("piece_length", piece_sent.is_some()), ("spacing", spacing_sent.is_some())]);
    }
    if !form.is_laid() {
        diagnostics.mark_unneeded(at, &[("diameter", diameter.is_some())]);
    }
    Some(ResolvedBackerRod {
        form,
        piece: piece?,
        spacing: spacing?,
        diameter: diameter.map_or(Some(None), |parsed| parsed.map(|parsed| Some(parsed.si)))?,
    })
}

fn resolve_spools(
    request: &MaterialEstimateRequest,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<Vec<ResolvedWireSpool>> {
    let spools = request.wire_spools.iter().flatten().enumerate().map(|(index, spool)| {
        let length = diagnostics.parse(&at.item(index).field("length"), &spool.length)?;
        Some(ResolvedWireSpool { length: length.si, sku: spool.sku.clone(), price: None })
    });
    spools.collect()
}

/// Something was wrong, which is noted.
struct NotedError;

/// The prices, with those that stand at items of stock.
fn resolve_prices(
    request: &MaterialEstimateRequest,
    stock: Option<&[ResolvedStockItem]>,
    diagnostics: &mut Diagnostics,
) -> Result<Option<ResolvedPrices>, NotedError> {
    let Some(prices) = &request.prices else { return Ok(None) };
    let skus = request.stock.iter().flatten().map(|item| item.sku.as_str());
    let spools = request.wire_spools.iter().flatten().filter_map(|spool| spool.sku.as_deref());
    let known: Vec<_> = skus.chain(spools).collect();
    let prices = prices.resolve(&known, &FieldPath::BODY.field("prices"), diagnostics);
    let mut prices = prices.ok_or(NotedError)?;
    for item in stock.into_iter().flatten() {
        if let Some(price) = item.price {
            prices.items.entry(item.sku.clone()).or_insert(price);
        }
    }
    Ok(Some(prices))
}

/// The spools with their prices.
fn price_spools(mut spools: Vec<ResolvedWireSpool>, prices: Option<&ResolvedPrices>) -> Vec<ResolvedWireSpool> {
    for spool in &mut spools {
        spool.price = prices.zip(spool.sku.as_ref()).and_then(|(prices, sku)| prices.of(sku));
    }
    spools
}

fn resolve_productivity(
    sent: Option<&Productivity>,
    at: &FieldPath<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<ResolvedProductivity> {
    const REASON: Statement = Statement::new("materials-no-public-pace");
    let none = Productivity::default();
    let sent = sent.unwrap_or(&none);
    let mut time = |name, text: Option<&_>, default| {
        diagnostics.parse_or_default(&at.field(name), text, default, REASON, Source::OwnChoice)
    };
    let set_up = time("set_up", sent.set_up.as_ref(), SET_UP_TIME);
    let core = time("core", sent.core.as_ref(), CORE_TIME);
    let pull = time("pull", sent.pull.as_ref(), PULL_TIME);
    let burial = time("burial", sent.burial.as_ref(), BURIAL_TIME);
    let termination = time("termination", sent.termination.as_ref(), TERMINATION_TIME);
    let test = time("test", sent.test.as_ref(), TEST_TIME);
    let mut speed = |name, text: Option<&_>, default| {
        diagnostics.parse_or_default(&at.field(name), text, default, REASON, Source::OwnChoice)
    };
    let cleaning_speed = speed("cleaning_speed", sent.cleaning_speed.as_ref(), CLEANING_SPEED);
    let sealing_speed = speed("sealing_speed", sent.sealing_speed.as_ref(), SEALING_SPEED);
    let saw_at = at.field("saw_speed");
    if sent.saw_speed.is_none() {
        let value = "6 ft/min in asphalt, 3 ft/min in concrete, at 1-1/2 in; less the deeper";
        diagnostics.add_assumption(&saw_at, value, REASON, &[Source::OwnChoice]);
    }
    let saw_speed = diagnostics.parse_optional(&saw_at, sent.saw_speed.as_ref());
    Some(ResolvedProductivity {
        set_up: set_up?,
        saw_speed,
        core: core?,
        cleaning_speed: cleaning_speed?,
        pull: pull?,
        burial: burial?,
        sealing_speed: sealing_speed?,
        termination: termination?,
        test: test?,
    })
}

/// Marks the figures of steps that neither the job nor its comparison has.
fn mark_unneeded_productivity(
    request: &MaterialEstimateRequest,
    constructions: &[Option<Construction>],
    surface: Surface,
    diagnostics: &mut Diagnostics,
) {
    let is_sawn = has_saw_cut(constructions, surface);
    let is_cored = is_sawn && request.saw.as_ref().and_then(|saw| saw.corner).is_some_and(Corner::is_cored);
    let is_buried = surface.allows(Construction::PreformedDirectBurial)
        || constructions.iter().any(|given| given.is_some_and(|asked| !asked.is_sawn()));
    let sent = request.productivity.as_ref();
    let figures = [
        (is_cored, "core", sent.is_some_and(|sent| sent.core.is_some())),
        (is_buried, "burial", sent.is_some_and(|sent| sent.burial.is_some())),
        (is_sawn, "saw_speed", sent.is_some_and(|sent| sent.saw_speed.is_some())),
        (is_sawn, "cleaning_speed", sent.is_some_and(|sent| sent.cleaning_speed.is_some())),
        (is_sawn, "sealing_speed", sent.is_some_and(|sent| sent.sealing_speed.is_some())),
    ];
    let body = FieldPath::BODY;
    for (_, name, is_sent) in figures.into_iter().filter(|(is_needed, ..)| !is_needed) {
        diagnostics.mark_unneeded(&body.field("productivity"), &[(name, is_sent)]);
    }
}

/// Whether the job, or a row of its comparison, has a saw cut.
fn has_saw_cut(constructions: &[Option<Construction>], surface: Surface) -> bool {
    let usual = surface.usual_construction();
    surface.allows(Construction::HandWound) || constructions.iter().any(|given| given.unwrap_or(usual).is_sawn())
}

/// A sku that is the name of an item would take the price of the item.
fn check_skus(request: &MaterialEstimateRequest, diagnostics: &mut Diagnostics) {
    let body = FieldPath::BODY;
    let (spools_at, stock_at, keys) = (body.field("wire_spools"), body.field("stock"), price_keys());
    let mut check = |list_at: &FieldPath<'_>, index: usize, sku: &str| {
        if MaterialItem::ALL.iter().any(|item| item.code() == sku) || keys.iter().any(|key| key == sku) {
            let (item_at, detail) =
                (list_at.item(index), Statement::new("errors-sku-of-item").text("sku", sku.to_owned()));
            let hint = Statement::new("errors-sku-of-item-hint");
            diagnostics.add_error(&item_at.field("sku"), FieldErrorCode::Contradiction, detail, hint);
        }
    };
    for (index, spool) in request.wire_spools.iter().flatten().enumerate() {
        check(&spools_at, index, spool.sku.as_deref().unwrap_or_default());
    }
    for (index, item) in request.stock.iter().flatten().enumerate() {
        check(&stock_at, index, &item.sku);
    }
}
