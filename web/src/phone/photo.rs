//! A photo: taken or chosen, shrunk, and drawn anew, so that nothing the camera wrote into it stays; and shown.
use super::files::{NoFile, choose};
use super::{document, window};
use fivebar_core::quantity::Id;
use js_sys::{Array, Promise, Uint8Array};
use std::cell::RefCell;
use std::fmt::Write;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement, Url};

const JPEG: &str = "image/jpeg";
/// The longest side that is kept, in pixels; sharp on any phone, and a few hundred kilobytes.
const SIDE_MOST: f64 = 1_600.0;
/// Of 1: little of it is seen, and half the bytes are saved.
const QUALITY: f64 = 0.8;

/// A picture, and the sum that says whether it is whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    pub kind: String,
    pub sha256: String,
    pub bytes: Vec<u8>,
}

/// Lets the person take a photo with the camera, or choose one; `None` where they put it away. Call it from a tap.
///
/// # Errors
/// It is no picture that this phone can read.
pub async fn take(camera: bool) -> Result<Option<Picture>, ()> {
    let file = match choose("image/*", camera).await {
        Ok(file) => file,
        Err(NoFile::PutAway) => return Ok(None),
        Err(_) => return Err(()),
    };
    let bytes = shrunk(&file).await.ok_or(())?;
    let sha256 = sha256(&bytes).await.ok_or(())?;
    Ok(Some(Picture { kind: JPEG.into(), sha256, bytes }))
}

/// The picture of a file, its longer side at most so many pixels.
async fn shrunk(file: &Blob) -> Option<Vec<u8>> {
    let url = Url::create_object_url_with_blob(file).ok()?;
    let drawn = drawn(&url).await;
    let _ = Url::revoke_object_url(&url);
    let blob = as_jpeg(&drawn?).await?;
    Some(Uint8Array::new(&JsFuture::from(blob.array_buffer()).await.ok()?).to_vec())
}

async fn drawn(url: &str) -> Option<HtmlCanvasElement> {
    let image = HtmlImageElement::new().ok()?;
    image.set_src(url);
    JsFuture::from(image.decode()).await.ok()?;
    let (width, height) = (f64::from(image.natural_width()), f64::from(image.natural_height()));
    if width < 1.0 || height < 1.0 {
        return None;
    }
    let less = (SIDE_MOST / width.max(height)).min(1.0);
    let (width, height) = ((width * less).round().max(1.0), (height * less).round().max(1.0));
    let canvas: HtmlCanvasElement = document()?.create_element("canvas").ok()?.unchecked_into();
    canvas.set_width(width as u32);
    canvas.set_height(height as u32);
    let pen: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.unchecked_into();
    pen.set_fill_style_str("#fff"); // what can be seen through would come out black
    pen.fill_rect(0.0, 0.0, width, height);
    pen.draw_image_with_html_image_element_and_dw_and_dh(&image, 0.0, 0.0, width, height).ok()?;
    Some(canvas)
}

async fn as_jpeg(canvas: &HtmlCanvasElement) -> Option<Blob> {
    let made = Promise::new(&mut |resolve, _| {
        let _ = canvas.to_blob_with_type_and_encoder_options(&resolve, JPEG, &QUALITY.into());
    });
    JsFuture::from(made).await.ok()?.dyn_into().ok()
}

/// SHA-256 in small hexadecimal digits, by the platform.
pub async fn sha256(bytes: &[u8]) -> Option<String> {
    let sum = window()?.crypto().ok()?.subtle().digest_with_str_and_u8_array("SHA-256", bytes).ok()?;
    let sum = Uint8Array::new(&JsFuture::from(sum).await.ok()?).to_vec();
    Some(sum.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    }))
}

/// The pictures that show, each by an address of this page alone; an address is given back when its picture no longer shows.
#[derive(Default)]
pub struct Shown {
    wanted: RefCell<Vec<Id>>,
    urls: RefCell<Vec<(Id, String)>>,
}

impl Shown {
    /// These show from now on; answers with those whose picture has still to be read.
    pub fn want(&self, ids: &[Id]) -> Vec<Id> {
        let mut urls = self.urls.borrow_mut();
        for (_, url) in urls.extract_if(.., |(id, _)| !ids.contains(id)) {
            let _ = Url::revoke_object_url(&url);
        }
        *self.wanted.borrow_mut() = ids.to_vec();
        ids.iter().filter(|id| !urls.iter().any(|(there, _)| there == *id)).copied().collect()
    }

    /// A picture that was read; one that is no longer wanted gets no address.
    pub fn add(&self, id: Id, picture: &Picture) {
        let (mut urls, wanted) = (self.urls.borrow_mut(), self.wanted.borrow().contains(&id));
        if wanted && !urls.iter().any(|(there, _)| *there == id) {
            urls.extend(address(picture).map(|url| (id, url)));
        }
    }

    /// Every picture that is wanted, with its address where it is on this phone.
    pub fn all(&self) -> Vec<(Id, Option<String>)> {
        let urls = self.urls.borrow();
        let of = |id: &Id| urls.iter().find(|(there, _)| there == id).map(|(_, url)| url.clone());
        self.wanted.borrow().iter().map(|id| (*id, of(id))).collect()
    }
}

fn address(picture: &Picture) -> Option<String> {
    let kind = BlobPropertyBag::new();
    kind.set_type(&picture.kind);
    let parts = Array::of1(&Uint8Array::from(&*picture.bytes).into());
    Url::create_object_url_with_blob(&Blob::new_with_u8_array_sequence_and_options(&parts, &kind).ok()?).ok()
}
