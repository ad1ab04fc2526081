//! What a build-up comes to, and which input is wrong where it comes to nothing.

use calc_derive::Outcome;
use uom::si::f64::ThermodynamicTemperature;

use super::{Crossing, Inputs};
use crate::formula::Formula as _;
use crate::thermal::build_up::{self, Bridge, BuildUpError, Layer};
use crate::thermal::condensation::{self, Profile, ProfileError, VapourLayer};
use crate::thermal::formulas::{ByFactor, DewPoint, InSeries, Mean, UValue, Within, ZoneWidth};
use crate::thermal::moisture::{self, AirError};
use crate::thermal::steel_rib::{self, RibError, RibbedBuildUp};
use crate::words::Msg;

/// What was worked out.
#[derive(Outcome)]
pub(super) struct Found {
    /// Battens or ribs counted in.
    #[outcome(name = "u_w_m2k")]
    pub u: UValue,
    /// Air to air, battens or ribs counted in.
    pub r_m2k_w: f64,
    /// Limits of the combined method; with nothing across, both the plain resistance.
    r_upper_m2k_w: Option<f64>,
    r_lower_m2k_w: Option<f64>,
    /// Between battens or ribs.
    #[outcome(name = "field_u_w_m2k")]
    pub field_u: UValue,
    pub zone_width: Option<ZoneWidth>,
    /// Of the air inside.
    pub dew_point: Option<DewPoint>,
    /// Between battens or ribs.
    pub inner_surface: Option<Within>,
    /// Over a batten or rib.
    pub bridge_surface: Option<ThermodynamicTemperature>,
    /// At the coldest part of the lining.
    pub surface_humidity_percent: Option<f64>,
    /// Of the air inside, at which mould can grow on the coldest part of the lining.
    pub humidity_limit_percent: Option<f64>,
    pub condenses_g_m2_day: Option<f64>,
    pub planes: Option<Vec<Wet>>,
    pub wet_within_layers: Option<Vec<usize>>,
    pub inner_surface_wet: Option<bool>,
    /// Between battens or ribs, from air to air.
    #[outcome(skip)]
    pub field: InSeries,
    /// With timber across.
    #[outcome(skip)]
    pub mean: Option<Mean>,
    #[outcome(skip)]
    pub rib: Option<RibbedBuildUp>,
    /// Over a rib.
    #[outcome(skip)]
    pub over_rib: Option<ByFactor>,
    /// Temperatures at the faces between battens or ribs, the inner surface first; empty where the
    /// air of a side is not given.
    #[outcome(skip)]
    pub faces: Vec<ThermodynamicTemperature>,
    /// Vapour between battens or ribs.
    #[outcome(skip)]
    pub profile: Option<Profile>,
}

/// Where water gathers.
#[derive(Outcome)]
pub(super) struct Wet {
    /// Behind this layer, counted from 1.
    after_layer: usize,
    /// Not at its back, but within this one.
    within_layer: Option<usize>,
    temperature: ThermodynamicTemperature,
    condenses_g_m2_day: f64,
}

/// An input that is wrong beside the others.
pub(super) struct Wrong {
    pub field: String,
    pub message: Msg,
}

impl Found {
    /// Works everything out.
    pub fn of(inputs: &Inputs) -> Result<Self, Wrong> {
        let (layers, surfaces) = (&inputs.plain_layers(), inputs.surfaces());
        let plain = build_up::series(layers, surfaces).map_err(of_build_up)?.r_m2k_w;
        let field = build_up::in_series(layers, surfaces);
        let (mut mean, mut rib, mut resistance) = (None, None, plain);
        match &inputs.bridge {
            Some(Crossing::Timber(bridge)) => {
                let both = build_up::limits(layers, *bridge, surfaces).map_err(of_build_up)?;
                resistance = both.value();
                mean = Some(both);
            }
            Some(Crossing::Steel(steel)) => {
                let ribbed = steel_rib::ribbed(layers, *steel, surfaces).map_err(of_rib)?;
                resistance = ribbed.r_m2k_w;
                rib = Some(ribbed);
            }
            None => {}
        }
        let limits = rib.is_none();
        let mut found = Self {
            u: UValue { resistance },
            r_m2k_w: resistance,
            r_upper_m2k_w: limits.then(|| mean.map_or(plain, |mean| mean.upper.value())),
            r_lower_m2k_w: limits.then(|| mean.map_or(plain, |mean| mean.lower.value())),
            field_u: UValue { resistance: plain },
            zone_width: rib.map(|rib| rib.zone_width),
            dew_point: None,
            inner_surface: None,
            bridge_surface: None,
            surface_humidity_percent: None,
            humidity_limit_percent: None,
            condenses_g_m2_day: None,
            planes: None,
            wet_within_layers: None,
            inner_surface_wet: None,
            field,
            mean,
            rib,
            over_rib: None,
            faces: Vec::new(),
            profile: None,
        };
        found.add_air(inputs, layers)?;
        Ok(found)
    }

    /// Temperatures and vapour, as far as the air of both sides is given.
    fn add_air(&mut self, inputs: &Inputs, layers: &[Layer]) -> Result<(), Wrong> {
        let surfaces = inputs.surfaces();
        let Some(inside) = inputs.inside.map(super::Air::moist) else { return Ok(()) };
        moisture::dew_point_iso_13788(inside).map_err(|error| of_air("inside", error))?;
        self.dew_point =
            Some(DewPoint { humidity: inside.humidity, temperature: inside.temperature });
        let Some(outside) = inputs.outside.map(super::Air::moist) else { return Ok(()) };
        let (warm, cold) = (inside.temperature, outside.temperature);
        let faces = |layers: &[Layer]| {
            condensation::temperatures(layers, surfaces, warm, cold).map_err(of_profile)
        };
        self.faces = faces(layers)?;
        let lining = Within {
            inside: warm,
            outside: cold,
            upto: surfaces.inside_m2k_w,
            total: self.field.value(),
        };
        self.inner_surface = Some(lining);
        self.over_rib =
            self.rib.map(|rib| ByFactor { inside: warm, outside: cold, factor: rib.rib_factor });
        self.bridge_surface = match (&inputs.bridge, &self.over_rib) {
            (Some(Crossing::Timber(bridge)), _) => {
                faces(&through_timber(layers, bridge))?.first().copied()
            }
            (_, over) => over.as_ref().map(ByFactor::value),
        };
        let lining = lining.value();
        let coldest = self.bridge_surface.filter(|over| *over < lining).unwrap_or(lining);
        let wet =
            moisture::humidity_limit(warm, coldest).map_err(|error| of_air("inside", error))?;
        self.humidity_limit_percent = Some(100.0 * (moisture::MOULD_HUMIDITY * wet));
        self.surface_humidity_percent = Some(100.0 * (inside.humidity / wet).min(1.0));
        let with_vapour: Option<Vec<VapourLayer>> = layers
            .iter()
            .zip(&inputs.layers)
            .map(|(layer, typed)| {
                Some(VapourLayer { layer: *layer, vapour_factor: typed.vapour_factor? })
            })
            .collect();
        if let Some(with_vapour) = with_vapour {
            let profile = condensation::profile(&with_vapour, surfaces, inside, outside)
                .map_err(of_profile)?;
            self.add_profile(profile);
        }
        Ok(())
    }

    fn add_profile(&mut self, profile: Profile) {
        let planes = profile.planes.iter().map(|plane| Wet {
            after_layer: plane.after_layer,
            within_layer: None,
            temperature: plane.temperature,
            condenses_g_m2_day: plane.condenses_g_m2_day,
        });
        let within = profile.within.iter().map(|within| Wet {
            after_layer: within.layer - 1,
            within_layer: Some(within.layer),
            temperature: within.temperature,
            condenses_g_m2_day: within.condenses_g_m2_day,
        });
        self.planes = Some(planes.chain(within).collect());
        self.condenses_g_m2_day = Some(profile.condenses_g_m2_day());
        self.wet_within_layers = Some(profile.within.iter().map(|within| within.layer).collect());
        self.inner_surface_wet = Some(profile.inner_surface_wet);
        self.profile = Some(profile);
    }

    /// Planes and layers where water gathers.
    pub fn wet(&self) -> usize {
        self.planes.as_ref().map_or(0, Vec::len)
    }
}

/// The layers as they lie at a batten.
fn through_timber(layers: &[Layer], bridge: &Bridge) -> Vec<Layer> {
    let at = |(index, layer): (usize, &Layer)| Layer {
        conductivity: if index == bridge.layer { bridge.conductivity } else { layer.conductivity },
        ..*layer
    };
    layers.iter().enumerate().map(at).collect()
}

fn of_build_up(error: BuildUpError) -> Wrong {
    let field = match &error {
        BuildUpError::NoLayers => "layers".to_owned(),
        BuildUpError::Thickness(layer) => format!("layers.{layer}.thickness"),
        BuildUpError::Conductivity(layer) => format!("layers.{layer}.conductivity"),
        BuildUpError::SurfaceResistance => "surface_in".to_owned(),
        BuildUpError::NoSuchLayer { .. } => "bridge.layer".to_owned(),
        BuildUpError::Share(_) => "bridge.share_percent".to_owned(),
        BuildUpError::MetalBridge { .. } => "bridge.conductivity".to_owned(),
        BuildUpError::LimitsApart { .. } => "bridge".to_owned(),
    };
    Wrong { field, message: error.told() }
}

fn of_rib(error: RibError) -> Wrong {
    let field = match error {
        RibError::BuildUp(error) => return of_build_up(error),
        RibError::Widths => "bridge.metal_width",
        RibError::Conductivity => "bridge.conductivity",
        RibError::ZonesOverlap { .. } => "bridge.spacing",
    };
    Wrong { field: field.to_owned(), message: error.told() }
}

fn of_profile(error: ProfileError) -> Wrong {
    match error {
        ProfileError::BuildUp(error) => of_build_up(error),
        ProfileError::Inside(error) => of_air("inside", error),
        ProfileError::Outside(error) => of_air("outside", error),
        ProfileError::VapourFactor(layer) => {
            Wrong { field: format!("layers.{layer}.vapour_factor"), message: error.told() }
        }
    }
}

fn of_air(side: &str, error: AirError) -> Wrong {
    let key = match error {
        AirError::Temperature => "temperature",
        AirError::Humidity => "humidity_percent",
    };
    Wrong { field: format!("{side}.{key}"), message: error.told() }
}
