//! An SVG picture as PNG, for apps that show no SVG.

use js_sys::Promise;
use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, File, HtmlCanvasElement, HtmlImageElement};

use crate::share::file_name::FileKind;
use crate::share::weight_picture::WeightPicture;
use crate::ui::platform;

/// Dots to a unit of the picture: sharp on the screens of telephones.
const SCALE: u32 = 3;

/// The picture as a PNG file; `None` when the browser draws none.
pub async fn png_file(picture: &WeightPicture, name: &str) -> Option<File> {
    let blob = draw(picture).await.ok().filter(JsValue::is_object)?;
    platform::file_of(&blob, name, FileKind::WeightPicture.media_type())
}

/// The PNG as a blob, or null.
async fn draw(picture: &WeightPicture) -> Result<JsValue, JsValue> {
    let image = HtmlImageElement::new()?;
    // A data address, as some browsers refuse to read back what came from a blob's.
    let text = String::from(js_sys::encode_uri_component(&picture.svg));
    image.set_src(&format!("data:image/svg+xml;charset=utf-8,{text}"));
    JsFuture::from(image.decode()).await?;
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.unchecked_into();
    let (width, height) = (picture.width * SCALE, picture.height * SCALE);
    canvas.set_width(width);
    canvas.set_height(height);
    let pen: CanvasRenderingContext2d = canvas
        .get_context("2d")?
        .ok_or(JsValue::NULL)?
        .unchecked_into();
    pen.draw_image_with_html_image_element_and_dw_and_dh(
        &image,
        0.0,
        0.0,
        f64::from(width),
        f64::from(height),
    )?;
    let mut refused = None;
    let drawn = Promise::new(&mut |done, _| refused = canvas.to_blob(&done).err());
    match refused {
        Some(error) => Err(error),
        None => JsFuture::from(drawn).await,
    }
}
