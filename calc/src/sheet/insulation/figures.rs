//! All figures of a build-up, and whose fault it is where there are none.

use crate::text::text;
use uom::si::f64::ThermodynamicTemperature;

use super::{Crossing, Inputs};
use crate::fault::Fault;
use crate::thermal::build_up::{self, Bridge, BuildUpError, Layer};
use crate::thermal::condensation::{self, Profile, ProfileError, VapourLayer};
use crate::thermal::moisture::{self, AirError};
use crate::thermal::steel_rib::{self, RibError, RibbedBuildUp};

/// What was worked out.
pub(super) struct Figures {
    /// Air to air, battens or ribs counted in.
    pub r_m2k_w: f64,
    /// Limits of the combined method; both the same where no timber crosses.
    pub upper_m2k_w: f64,
    pub lower_m2k_w: f64,
    /// Air to air between battens or ribs.
    pub field_r_m2k_w: f64,
    /// Steel ribs.
    pub rib: Option<RibbedBuildUp>,
    /// Dew point of the air inside.
    pub dew_point: Option<ThermodynamicTemperature>,
    /// Temperatures at the faces between battens or ribs, the inner surface first; empty where the
    /// air of a side is not given.
    pub faces: Vec<ThermodynamicTemperature>,
    /// Inner surface over a batten or rib.
    pub bridge_surface: Option<ThermodynamicTemperature>,
    /// Vapour between battens or ribs.
    pub profile: Option<Profile>,
    /// The humidity inside, 0 to 1, at which mould can grow on the coldest part of the lining.
    pub humidity_limit: Option<f64>,
    /// Relative humidity at the coldest part of the lining, 0 to 1.
    pub surface_humidity: Option<f64>,
}

impl Figures {
    /// Works everything out.
    pub fn of(inputs: &Inputs) -> Result<Self, Vec<Fault>> {
        let (layers, surfaces) = (&inputs.layers, inputs.surfaces);
        let field =
            build_up::series(layers, surfaces).map_err(|error| faults(build_up_fault(&error)))?;
        let mut found = Self {
            r_m2k_w: field.r_m2k_w,
            upper_m2k_w: field.upper_m2k_w,
            lower_m2k_w: field.lower_m2k_w,
            field_r_m2k_w: field.r_m2k_w,
            rib: None,
            dew_point: None,
            faces: Vec::new(),
            bridge_surface: None,
            profile: None,
            humidity_limit: None,
            surface_humidity: None,
        };
        match &inputs.bridge {
            Some(Crossing::Timber(bridge)) => {
                let both = build_up::bridged(layers, *bridge, surfaces)
                    .map_err(|error| faults(build_up_fault(&error)))?;
                found.r_m2k_w = both.r_m2k_w;
                found.upper_m2k_w = both.upper_m2k_w;
                found.lower_m2k_w = both.lower_m2k_w;
            }
            Some(Crossing::Steel(rib)) => {
                let ribbed = steel_rib::ribbed(layers, *rib, surfaces)
                    .map_err(|error| faults(rib_fault(&error)))?;
                found.r_m2k_w = ribbed.r_m2k_w;
                found.rib = Some(ribbed);
            }
            None => {}
        }
        found.add_air(inputs)?;
        Ok(found)
    }

    /// Temperatures and vapour, as far as the air of both sides is given.
    fn add_air(&mut self, inputs: &Inputs) -> Result<(), Vec<Fault>> {
        let (layers, surfaces) = (&inputs.layers, inputs.surfaces);
        let Some(inside) = inputs.inside else { return Ok(()) };
        self.dew_point = Some(
            moisture::dew_point_iso_13788(inside).map_err(|error| air_fault("inside", error))?,
        );
        let Some(outside) = inputs.outside else { return Ok(()) };
        let (warm, cold) = (inside.temperature, outside.temperature);
        let faces = |layers: &[Layer]| {
            condensation::temperatures(layers, surfaces, warm, cold)
                .map_err(|error| profile_fault(&error))
        };
        self.faces = faces(layers)?;
        self.bridge_surface = match (&inputs.bridge, &self.rib) {
            (Some(Crossing::Timber(bridge)), _) => {
                faces(&through_timber(layers, bridge))?.first().copied()
            }
            (_, Some(rib)) => {
                Some(rib.rib_surface(warm, cold).map_err(|error| air_fault("outside", error))?)
            }
            _ => None,
        };
        let coldest = [self.faces.first().copied(), self.bridge_surface]
            .into_iter()
            .flatten()
            .reduce(|a, b| if b < a { b } else { a });
        if let Some(coldest) = coldest {
            let wet = moisture::humidity_limit(warm, coldest)
                .map_err(|error| air_fault("inside", error))?;
            self.humidity_limit = Some(moisture::MOULD_HUMIDITY * wet);
            self.surface_humidity = Some((inside.humidity / wet).min(1.0));
        }
        let with_vapour: Option<Vec<VapourLayer>> = layers
            .iter()
            .zip(&inputs.vapour_factors)
            .map(|(layer, factor)| Some(VapourLayer { layer: *layer, vapour_factor: (*factor)? }))
            .collect();
        if let Some(with_vapour) = with_vapour {
            self.profile = Some(
                condensation::profile(&with_vapour, surfaces, inside, outside)
                    .map_err(|error| profile_fault(&error))?,
            );
        }
        Ok(())
    }
}

/// The layers as they lie at a batten.
fn through_timber(layers: &[Layer], bridge: &Bridge) -> Vec<Layer> {
    layers
        .iter()
        .enumerate()
        .map(|(index, layer)| {
            let conductivity =
                if index == bridge.layer { bridge.conductivity } else { layer.conductivity };
            Layer { conductivity, ..*layer }
        })
        .collect()
}

fn faults(fault: Fault) -> Vec<Fault> {
    vec![fault]
}

fn build_up_fault(error: &BuildUpError) -> Fault {
    let field = match error {
        BuildUpError::NoLayers => "layers".to_owned(),
        BuildUpError::Thickness(layer) => text!("layers.{}.thickness", &layer),
        BuildUpError::Conductivity(layer) => text!("layers.{}.conductivity", &layer),
        BuildUpError::SurfaceResistance => "surface_in".to_owned(),
        BuildUpError::NoSuchLayer { .. } => "bridge.layer".to_owned(),
        BuildUpError::Share(_) => "bridge.share_percent".to_owned(),
        BuildUpError::MetalBridge { .. } => {
            return Fault::new(
                "bridge.conductivity",
                text!(
                    "{}: give its metal_width, web and spacing instead of share_percent, and \
                     the zone method is used",
                    &error
                ),
            );
        }
        BuildUpError::LimitsApart { .. } => "bridge".to_owned(),
    };
    Fault::new(field, error.to_string())
}

fn rib_fault(error: &RibError) -> Fault {
    let field = match error {
        RibError::BuildUp(error) => return build_up_fault(error),
        RibError::Widths => "bridge.metal_width",
        RibError::Conductivity => "bridge.conductivity",
        RibError::ZonesOverlap { .. } => "bridge.spacing",
    };
    Fault::new(field, error.to_string())
}

fn profile_fault(error: &ProfileError) -> Vec<Fault> {
    match error {
        ProfileError::BuildUp(error) => faults(build_up_fault(error)),
        ProfileError::Inside(error) => air_fault("inside", *error),
        ProfileError::Outside(error) => air_fault("outside", *error),
        ProfileError::VapourFactor(layer) => {
            faults(Fault::new(text!("layers.{}.vapour_factor", &layer), error.to_string()))
        }
    }
}

fn air_fault(side: &str, error: AirError) -> Vec<Fault> {
    let key = match error {
        AirError::Temperature => "temperature",
        AirError::Humidity => "humidity_percent",
    };
    faults(Fault::new(text!("{}.{}", &side, &key), error.to_string()))
}
